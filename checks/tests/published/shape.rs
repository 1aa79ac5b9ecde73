//! Plain shapes as problems give them, and their volume over surface.
//!
//! A problem gives a block or a disc, not its modulus. The sums of a block, a cylinder and a ball
//! are those of any school book; what is divided by what is the law's own affair.

use std::f64::consts::PI;

use checks::given::{Given, GivenError};
use measure::length::{Area, Length, Volume};
use pattern::sections::modulus;

/// The modulus given under a key, or that of the shape given under the key with the shape's name
/// after it: `riser_cylinder = "60 mm, 60 mm"`.
pub fn modulus_of(given: &Given<'_>, key: &str) -> Result<Length, GivenError> {
    let shape = ["block", "cylinder", "ball"]
        .into_iter()
        .find(|shape| given.has(&format!("{key}_{shape}")));
    match shape {
        Some(shape) => {
            let (volume, surface) = volume_and_surface(given, key, shape)?;
            Ok(modulus(volume, surface))
        }
        None => given.quantity(key),
    }
}

/// Volume and surface given as such, or those of a shape.
pub fn measures_of(given: &Given<'_>) -> Result<(Volume, Area), GivenError> {
    for shape in ["block", "cylinder", "ball"] {
        if given.has(&format!("part_{shape}")) {
            return volume_and_surface(given, "part", shape);
        }
    }
    Ok((given.quantity("volume")?, given.quantity("surface")?))
}

fn volume_and_surface(
    given: &Given<'_>,
    key: &str,
    shape: &str,
) -> Result<(Volume, Area), GivenError> {
    let key = format!("{key}_{shape}");
    let sides: Vec<Length> = given.quantities(&key)?;
    match (shape, sides.as_slice()) {
        ("block", &[a, b, c]) => Ok((a * b * c, (a * b + b * c + c * a) * 2.0)),
        ("cylinder", &[d, h]) => Ok((d * d * h * (PI / 4.0), d * d * (PI / 2.0) + d * h * PI)),
        ("ball", &[d]) => Ok((d * d * d * (PI / 6.0), d * d * PI)),
        _ => Err(GivenError::Not {
            typed: given.text(&key)?.to_owned(),
            key,
            wanted: "three sides, diameter and height, or a diameter",
        }),
    }
}
