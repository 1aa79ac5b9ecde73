//! Comparing with figures as they were printed.

/// Holds that figures agree with printed ones in every digit printed.
pub fn assert_printed(case: &str, found: &[f64], printed: &str) {
    let wanted: Vec<&str> = printed.split_whitespace().collect();
    assert_eq!(found.len(), wanted.len(), "{case}: {found:?}");
    for (at, (found, text)) in found.iter().zip(&wanted).enumerate() {
        let decimals = text.split_once('.').map_or(0, |(_, after)| after.len());
        let half = 0.5 * 10f64.powi(-i32::try_from(decimals).unwrap());
        let value: f64 = text.parse().unwrap();
        let off = (found - value).abs();
        assert!(
            off <= half * 1.001,
            "{case}, figure {at}: {found} for {text}"
        );
    }
}

/// Holds that figures agree within shares of the printed ones, for cases whose printed figures were
/// worked out with too few digits.
pub fn assert_within(case: &str, found: &[f64], wanted: &[f64], share: f64) {
    assert_eq!(found.len(), wanted.len(), "{case}");
    for (found, wanted) in found.iter().zip(wanted) {
        let off = (found - wanted).abs();
        assert!(off <= share * wanted.abs(), "{case}: {found} for {wanted}");
    }
}

/// Rows of numbers typed as text, a row a line or a semicolon.
pub fn rows(text: &str) -> Vec<Vec<f64>> {
    let lines = text.split(['\n', ';']).map(str::trim);
    let lines = lines.filter(|line| !line.is_empty());
    lines.map(numbers).collect()
}

/// Numbers typed as text.
pub fn numbers(text: &str) -> Vec<f64> {
    text.split_whitespace()
        .map(|number| number.parse().unwrap())
        .collect()
}
