//! A formula with the numbers put in the place of its symbols.

/// Puts texts in the place of symbols: `A = m / (ρ t)` becomes
/// `A = (4.2 kg) / ((2.4 g/cm³) (3 s))`.
///
/// A symbol is a whole run of letters with its subscripts; what is no symbol of the list stays, and
/// so does a symbol that is explained behind the formula: `…, s = 0.05`.
pub fn with_numbers(formula: &str, numbers: &[(&str, String)]) -> String {
    let mut out = String::with_capacity(formula.len() * 2);
    let mut name = String::new();
    for (at, letter) in formula.char_indices() {
        if is_part_of_symbol(letter, &name) {
            name.push(letter);
            continue;
        }
        let behind = out.trim_end().ends_with([',', ';']);
        let explained = behind && formula[at..].starts_with(" = ");
        match explained {
            true => out.push_str(&name),
            false => out.push_str(&number_for(&name, numbers)),
        }
        name.clear();
        out.push(letter);
    }
    out.push_str(&number_for(&name, numbers));
    out
}

fn number_for(name: &str, numbers: &[(&str, String)]) -> String {
    match numbers.iter().find(|(symbol, _)| *symbol == name) {
        Some((_, number)) if !name.is_empty() => format!("({number})"),
        _ => name.to_owned(),
    }
}

/// Letters, and after a first letter the marks that belong to it: `T_s`, `h₁`, `A'`.
fn is_part_of_symbol(letter: char, before: &str) -> bool {
    let superscript = matches!(letter, '²' | '³' | '⁴' | '½' | '⅓' | '¼' | '¹');
    if superscript {
        return false;
    }
    let subscript = ('₀'..='ₜ').contains(&letter) || letter == '_' || letter == '\'';
    let digit = letter.is_ascii_digit() && before.contains('_');
    letter.is_alphabetic() && !subscript || !before.is_empty() && (subscript || digit)
}

#[cfg(test)]
mod tests {
    use super::with_numbers;

    #[test]
    fn numbers_stand_in_the_place_of_whole_symbols() {
        let numbers = [
            ("m", "4.2 kg".to_owned()),
            ("ρ", "2.4 g/cm³".to_owned()),
            ("h₁", "12 mm".to_owned()),
            ("T_s", "557 °C".to_owned()),
        ];
        assert_eq!(
            with_numbers("A = m / (ρ t √(2 g H))", &numbers),
            "A = (4.2 kg) / ((2.4 g/cm³) t √(2 g H))"
        );
        assert_eq!(with_numbers("h₁² / mm", &numbers), "(12 mm)² / mm");
        assert_eq!(with_numbers("(T_s − T_0)", &numbers), "((557 °C) − T_0)");
        assert_eq!(
            with_numbers("V = m / ρ; m = 2 kg, ρ = table", &numbers),
            "V = (4.2 kg) / (2.4 g/cm³); m = 2 kg, ρ = table"
        );
    }
}
