//! Numbers side by side on the widest registers of the machine, with the signs of arithmetic.
//!
//! Every sum and product is rounded by itself, never two at once, so that the narrowest registers
//! give the very numbers that the widest give.

use std::ops::{Add, Mul, Sub};

use pulp::Simd;

/// Cells of a block: as many numbers as the widest register holds; narrower ones divide it.
pub const LANES: usize = 8;

/// As many numbers as a register holds.
#[derive(Clone, Copy)]
pub struct Wide<S: Simd> {
    simd: S,
    numbers: S::f32s,
}

/// Numbers in a row, a register at a time.
#[derive(Clone, Copy)]
pub struct Row<'all, S: Simd> {
    simd: S,
    numbers: &'all [S::f32s],
}

/// A row that is written.
pub struct RowMut<'all, S: Simd> {
    simd: S,
    numbers: &'all mut [S::f32s],
}

/// Registers that hold some numbers; a rest that does not fill one is left out.
#[inline(always)]
pub fn registers<S: Simd>(numbers: usize) -> usize {
    numbers / S::F32_LANES
}

/// A register of a block.
#[inline(always)]
pub fn load<S: Simd>(simd: S, block: &[f32; LANES], at: usize) -> Wide<S> {
    let numbers = S::as_simd_f32s(block).0[at];
    Wide { simd, numbers }
}

/// Writes a register of a block.
#[inline(always)]
pub fn store<S: Simd>(_: S, block: &mut [f32; LANES], at: usize, wide: Wide<S>) {
    S::as_mut_simd_f32s(block).0[at] = wide.numbers;
}

impl<'all, S: Simd> Row<'all, S> {
    /// The first `count` registers of a list.
    #[inline(always)]
    pub fn of(simd: S, numbers: &'all [f32], count: usize) -> Row<'all, S> {
        let numbers = &S::as_simd_f32s(numbers).0[..count];
        Row { simd, numbers }
    }

    /// Some of its registers.
    #[inline(always)]
    pub fn part(&self, first: usize, count: usize) -> Row<'all, S> {
        let numbers = &self.numbers[first..first + count];
        Row { numbers, ..*self }
    }

    /// A register.
    #[inline(always)]
    pub fn at(&self, at: usize) -> Wide<S> {
        Wide {
            simd: self.simd,
            numbers: self.numbers[at],
        }
    }
}

impl<'all, S: Simd> RowMut<'all, S> {
    /// The first `count` registers of a list.
    #[inline(always)]
    pub fn of(simd: S, numbers: &'all mut [f32], count: usize) -> RowMut<'all, S> {
        let numbers = &mut S::as_mut_simd_f32s(numbers).0[..count];
        RowMut { simd, numbers }
    }

    /// A register.
    #[inline(always)]
    pub fn at(&self, at: usize) -> Wide<S> {
        Wide {
            simd: self.simd,
            numbers: self.numbers[at],
        }
    }

    /// Some of its registers.
    #[inline(always)]
    pub fn part(&mut self, first: usize, count: usize) -> RowMut<'_, S> {
        let numbers = &mut self.numbers[first..first + count];
        RowMut {
            simd: self.simd,
            numbers,
        }
    }

    /// Writes a register.
    #[inline(always)]
    pub fn put(&mut self, at: usize, wide: Wide<S>) {
        self.numbers[at] = wide.numbers;
    }
}

impl<S: Simd> Wide<S> {
    /// One number throughout.
    #[inline(always)]
    pub fn all(simd: S, number: f32) -> Wide<S> {
        let numbers = simd.splat_f32s(number);
        Wide { simd, numbers }
    }

    /// The larger of both, number by number.
    #[inline(always)]
    pub fn max(self, other: Wide<S>) -> Wide<S> {
        let numbers = self.simd.max_f32s(self.numbers, other.numbers);
        Wide { numbers, ..self }
    }

    /// The smaller of both, number by number.
    #[inline(always)]
    pub fn min(self, other: Wide<S>) -> Wide<S> {
        let numbers = self.simd.min_f32s(self.numbers, other.numbers);
        Wide { numbers, ..self }
    }

    /// The largest of its numbers.
    #[inline(always)]
    pub fn largest(self) -> f32 {
        self.simd.reduce_max_f32s(self.numbers)
    }

    /// Whether any number stands above one of the levels before and not after, or the other way
    /// round.
    #[inline(always)]
    pub fn any_crosses(self, after: Wide<S>, levels: &[f32; 4]) -> bool {
        let simd = self.simd;
        let crosses = |level: f32| {
            let level = simd.splat_f32s(level);
            let was = simd.greater_than_f32s(self.numbers, level);
            simd.xor_m32s(was, simd.greater_than_f32s(after.numbers, level))
        };
        let [a, b, c, d] = *levels;
        let any = simd.or_m32s(
            simd.or_m32s(crosses(a), crosses(b)),
            simd.or_m32s(crosses(c), crosses(d)),
        );
        simd.first_true_m32s(any) < S::F32_LANES
    }
}

impl<S: Simd> Add for Wide<S> {
    type Output = Wide<S>;

    #[inline(always)]
    fn add(self, other: Wide<S>) -> Wide<S> {
        let numbers = self.simd.add_f32s(self.numbers, other.numbers);
        Wide { numbers, ..self }
    }
}

impl<S: Simd> Sub for Wide<S> {
    type Output = Wide<S>;

    #[inline(always)]
    fn sub(self, other: Wide<S>) -> Wide<S> {
        let numbers = self.simd.sub_f32s(self.numbers, other.numbers);
        Wide { numbers, ..self }
    }
}

impl<S: Simd> Mul for Wide<S> {
    type Output = Wide<S>;

    #[inline(always)]
    fn mul(self, other: Wide<S>) -> Wide<S> {
        let numbers = self.simd.mul_f32s(self.numbers, other.numbers);
        Wide { numbers, ..self }
    }
}

#[cfg(test)]
mod tests {
    use pulp::Arch;

    use crate::case::{Case, Condition, Contact};
    use crate::grid::Grid;
    use crate::material::{Material, Phase};
    use crate::materials::{damp, metal};
    use crate::multirate::Multirate;
    use crate::run::{End, Wish};

    /// What freezes in a filling that changes beside one that does not, with a void, on odd counts.
    fn mixed_case() -> Case {
        let phase = Phase {
            j_m3k: 1.7e6,
            w_mk: 0.6,
        };
        let grid = Grid::uniform([29, 13, 11], 0.004);
        let mut case = Case::filled(grid, Material::plain("filling", phase), 25.0);
        case.materials.push(damp());
        case.materials.push(metal());
        case.voids = vec![Condition::Exchange {
            w_m2k: 20.0,
            celsius: 20.0,
            emissivity: 0.4,
        }];
        case.faces[0] = Condition::Held { celsius: 10.0 };
        case.contacts = vec![Contact {
            between: [0, 2],
            w_m2k: 400.0,
        }];
        for cell in 0..case.grid.cells() {
            let [x, y, z] = case.grid.place(cell);
            let metal = (4..23).contains(&x) && (3..9).contains(&y) && z >= 4;
            case.cells[cell] = match (metal, z) {
                (true, 9..) if x == 12 => 3,
                (true, _) => 2,
                (false, 6..) => 1,
                (false, _) => 0,
            };
            case.start_c[cell] = if metal { 690.0 } else { 25.0 };
        }
        case
    }

    #[test]
    fn the_narrowest_registers_give_the_numbers_of_the_widest() {
        let case = mixed_case();
        let wish = Wish {
            longest_step_s: Some(1.0),
            early_contact: true,
            ..Wish::until(End::At { s: 400.0 })
        };
        let ran = |arch| {
            let mut run = Multirate::start(&case, &wish);
            run.arch = arch;
            for step in 1..=400 {
                run.advance(1.0, f64::from(step));
            }
            (run.unfrozen(), run.finish(400.0))
        };
        let (wide, narrow) = (ran(Arch::new()), ran(Arch::Scalar));
        assert_eq!(wide.0, narrow.0);
        assert_eq!(wide.1.0, narrow.1.0);
        // Not a number is what has not happened, and never equals itself.
        let told = |freezing: &crate::freezing::Freezing| format!("{freezing:?}");
        assert_eq!(told(&wide.1.1), told(&narrow.1.1));
        assert!(wide.1.1.ends_s.iter().any(|end| end.is_finite()));
    }
}
