//! French spacing: a mark of two parts, a percent sign and quotes keep their space on the line.

use std::borrow::Cow;

/// A French text whose spaces before `:`, `;`, `?`, `!`, `%` and inside quotes do not break.
pub(super) fn in_french(text: &str) -> Cow<'_, str> {
    const MARKS: [(&str, &str); 7] = [
        (" :", "\u{a0}:"),
        (" ;", "\u{a0};"),
        (" ?", "\u{a0}?"),
        (" !", "\u{a0}!"),
        (" %", "\u{a0}%"),
        ("« ", "«\u{a0}"),
        (" »", "\u{a0}»"),
    ];
    let kept = MARKS.iter().fold(text.to_owned(), |text, (loose, kept)| {
        text.replace(loose, kept)
    });
    Cow::Owned(kept)
}

#[cfg(test)]
mod tests {
    use super::in_french;

    #[test]
    fn marks_keep_their_space() {
        let text = in_french("perte : 10 % ; « pas sous »");
        assert_eq!(text, "perte\u{a0}: 10\u{a0}%\u{a0}; «\u{a0}pas sous\u{a0}»");
    }
}
