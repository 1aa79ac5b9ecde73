//! The page on which a phone is paired: the certificate first, then the code. It needs no script.

use job::words::Language;
use job::words::said::Said;

/// What went wrong with a try.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// A wrong code; so many tries are left.
    Wrong(u32),
    /// No code is good any more.
    NoCode,
}

/// How the page looks: large, dark on white.
pub const STYLE: &str = "\
:root { font-family: sans-serif; font-size: 112.5%; line-height: 1.45; color: #000; \
background: #fff }
body { max-width: 34rem; margin: 0 auto; padding: 1rem }
h1 { font-size: 1.5rem; line-height: 1.2 }
h2 { font-size: 1.15rem; margin-top: 2rem }
code { display: block; font-size: 0.9rem; overflow-wrap: anywhere; padding: 0.5rem; \
border: 1px solid #000 }
label { display: block; margin: 1rem 0 0.25rem }
input { font: inherit; font-size: 1.4rem; width: 100%; box-sizing: border-box; min-height: 56px; \
padding: 0 0.75rem; border: 2px solid #000; border-radius: 0; background: #fff; color: #000 }
button, .button { display: block; width: 100%; box-sizing: border-box; min-height: 56px; margin: \
1rem 0; padding: 0.75rem; font: inherit; font-weight: 700; text-align: center; color: #fff; \
background: #000; border: 0; text-decoration: none }
:focus-visible { outline: 4px solid #000; outline-offset: 3px }
[role=alert] { border: 3px solid #000; padding: 0.75rem; font-weight: 700 }
";

/// The page in a language.
pub fn page(words: Language, fingerprint: &str, trouble: Option<Trouble>) -> String {
    let word = |id: &'static str| escaped(&words.word(id));
    let trouble = trouble.map_or_else(String::new, |trouble| {
        let said = match trouble {
            Trouble::Wrong(left) => Said::new("phone-wrong-code").with("left", left.to_string()),
            Trouble::NoCode => Said::new("phone-no-code"),
        };
        format!("<p role=\"alert\">{}</p>\n", escaped(&words.say(&said)))
    });
    let title = word("phone-welcome");
    format!(
        "<!doctype html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{title} · Oddside</title>\n<link rel=\"stylesheet\" href=\"/pair.css\">\n</head>\n\
         <body>\n<main>\n<h1>{title}</h1>\n{trouble}\
         <h2>{first}</h2>\n<p>{certificate}</p>\n\
         <a class=\"button\" href=\"/oddside-shop.crt\">{install}</a>\n<p>{compare}</p>\n\
         <code>{fingerprint}</code>\n<p>{how}</p>\n\
         <h2>{then}</h2>\n<form method=\"post\" action=\"/pair\">\n\
         <label for=\"code\">{code}</label>\n\
         <input id=\"code\" name=\"code\" inputmode=\"numeric\" autocomplete=\"one-time-code\" \
         maxlength=\"20\" required>\n\
         <label for=\"name\">{name}</label>\n\
         <input id=\"name\" name=\"name\" maxlength=\"40\" autocomplete=\"off\">\n\
         <button>{pair}</button>\n</form>\n</main>\n</body>\n</html>\n",
        language = words.code(),
        first = word("phone-welcome-first"),
        certificate = word("phone-welcome-certificate"),
        install = word("phone-welcome-install"),
        compare = word("phone-welcome-compare"),
        how = word("phone-welcome-how"),
        then = word("phone-welcome-then"),
        code = word("phone-welcome-code"),
        name = word("phone-welcome-name"),
        pair = word("phone-welcome-pair"),
    )
}

/// Words as they may stand in a page.
fn escaped(words: &str) -> String {
    let mut escaped = String::with_capacity(words.len());
    for letter in words.chars() {
        match letter {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            other => escaped.push(other),
        }
    }
    escaped
}
