// Surroundings of a staged cell: rate, their temperature, steady heat; what they gave in a step,
// after even and after odd stages, J/m3; what they gave in all, J, and what rounding left of it.
struct Around {
    rate: f32,
    celsius: f32,
    steady: f32,
    even: f32,
    odd: f32,
    through: f32,
    lost: f32,
    volume: f32,
}
