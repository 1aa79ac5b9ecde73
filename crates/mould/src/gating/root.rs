//! Where a steady function passes through nought.

/// Most steps: halving alone needs some fifty for the last digit of a double.
const STEPS: usize = 200;

/// Width of what is left, as a part of the root, at which it is found.
const NEAR: f64 = 1e-15;

/// The place between two ends at which a rising function is nought; an end where it never is.
///
/// False position with the halved stand-in of the Illinois rule, and plain halving whenever that
/// gains less than half, so that it comes to rest on any function.
pub(super) fn rising_root(function: impl Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    let (mut low, mut high) = (low, high);
    let (mut at_low, mut at_high) = (function(low), function(high));
    if at_low >= 0.0 {
        return low;
    }
    if at_high <= 0.0 {
        return high;
    }
    let mut halve = false;
    let mut side = 0i8;
    for _ in 0..STEPS {
        let width = high - low;
        let hair = NEAR * high.abs().max(low.abs());
        if width <= 2.0 * hair {
            break;
        }
        let middle = match halve || !(at_high - at_low).is_finite() {
            true => low + 0.5 * width,
            // A hair away from the ends, so that a root beside one of them is hemmed in too.
            false => (low - at_low * width / (at_high - at_low)).clamp(low + hair, high - hair),
        };
        let there = function(middle);
        if there < 0.0 {
            (low, at_low) = (middle, there);
            at_high *= if side < 0 { 0.5 } else { 1.0 };
            side = -1;
        } else {
            (high, at_high) = (middle, there);
            at_low *= if side > 0 { 0.5 } else { 1.0 };
            side = 1;
        }
        if there == 0.0 {
            return middle;
        }
        halve = high - low > 0.5 * width;
    }
    low + 0.5 * (high - low)
}

#[cfg(test)]
mod tests {
    use super::rising_root;

    #[test]
    fn finds_the_root_of_curves_that_mislead_false_position() {
        let near = |found: f64, root: f64| assert!((found - root).abs() < 1e-12, "{found} {root}");
        near(rising_root(|x| x * x - 2.0, 0.0, 2.0), 2f64.sqrt());
        near(
            rising_root(|x| x.powi(15) - 0.5, 0.0, 4.0),
            0.5f64.powf(1.0 / 15.0),
        );
        near(
            rising_root(|x| if x < 0.3 { -1.0 } else { f64::INFINITY }, 0.0, 1.0),
            0.3,
        );
    }

    #[test]
    fn gives_an_end_where_there_is_no_root() {
        assert_eq!(rising_root(|x| x + 1.0, 0.0, 1.0), 0.0);
        assert_eq!(rising_root(|x| x - 5.0, 0.0, 1.0), 1.0);
    }
}
