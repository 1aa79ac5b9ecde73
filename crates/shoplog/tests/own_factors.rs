//! Factors of the shop's own: accepted into shop.toml, taken off again from plans that were worked
//! out with them, and sand told apart from its contact with the metal.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

mod shop;

use job::contact_worth::contact_worth_mm;
use job::shop::ShopFile;
use shop::Shop;
use shoplog::entry::Fresh;
use shoplog::learn::accepted::{accepted, accepted_contact, name};
use shoplog::learn::apart::apart;
use shoplog::learn::{Lesson, lessons};
use shoplog::prefill::of_plan;
use shoplog::table::sand::BATCHES;
use shoplog::written_pour::write_pour;

impl Shop {
    /// A pour of a plan for a section of this modulus that was to freeze in these seconds, and its
    /// time as it was; a plan worked out with a factor of the shop's own says so.
    fn pour(&mut self, modulus_mm: f64, planned_s: f64, own: Option<f64>, freezing_s: f64) {
        let beside = own.map_or(String::new(), |factor| {
            format!(", \"beside\": {{\"own factor\": \"{factor}\"}}")
        });
        let (low, high) = (planned_s * 0.7, planned_s * 1.5);
        let plan = format!(
            r#"{{"job": "Bracket", "alloy": "A356", "count": 1, "figures": {{
            "modulus of the heaviest section": {{"low": {modulus_mm}, "likely": {modulus_mm},
                "high": {modulus_mm}, "unit": "mm"}},
            "freezing time of the heaviest section": {{"low": {low}, "likely": {planned_s},
                "high": {high}, "unit": "s"{beside}}}}}}}"#
        );
        let prefilled = of_plan(&plan).expect("a plan");
        let typed = [("freezing".to_owned(), format!("{freezing_s} s"))];
        write_pour(&mut self.log, &prefilled, &typed).expect("written");
    }

    /// A batch that was to dry in six hours, and the time it took.
    fn dried(&mut self, hours: &str) {
        let given = [
            ("mixed", "2026-05-03"),
            ("planned_drying", "6 h"),
            ("drying", hours),
        ];
        let fresh = given
            .iter()
            .fold(Fresh::of(&BATCHES), |fresh, (key, text)| {
                fresh.typed(&self.log, key, text).expect("understood")
            });
        self.log.add(&[fresh]).expect("written");
    }

    fn lesson(&self, of: &str) -> Lesson {
        let lessons = lessons(&self.log).expect("taught");
        let found = lessons.into_iter().find(|one| name(&one.of) == of);
        found.expect("taught")
    }

    fn freezing(&self) -> Lesson {
        self.lesson("freezing")
    }
}

fn shop_of(text: &str) -> job::shop::Shop {
    let file: ShopFile = toml::from_str(text).expect("a shop");
    file.meant().expect("sound")
}

#[test]
fn a_factor_is_accepted_with_its_ends_and_read_by_the_shop() {
    let mut shop = Shop::new();
    for freezing in [236.0, 244.0, 240.0] {
        shop.pour(8.0, 200.0, None, freezing);
    }
    let lesson = shop.freezing();
    let text = "# mine\nunits = \"metric\"\n";
    let once = accepted(text, &lesson).expect("accepted");
    assert!(once.starts_with(text), "{once}");
    assert!(once.contains("[learned.freezing]\nfactor = 1.1"), "{once}");
    assert!(once.contains("rests_on = \"by pours 1, 2, 3\""), "{once}");
    let learned = shop_of(&once).learned.freezing.expect("read");
    let [low, likely, high] = lesson.now();
    assert!((learned.likely() - likely).abs() < 1e-3);
    assert!((learned.low() - low).abs() < 1e-3 && (learned.high() - high).abs() < 1e-3);
    // Accepted again, it stands once.
    let twice = accepted(&once, &lesson).expect("accepted");
    assert_eq!(once, twice);
}

/// Five batches that dried slower than planned. scipy 1.17.1, with y the logarithms of what was
/// over what was planned: `stats.t(4 + n, y.sum()/k, sqrt(ss/(4 + n)/k))` where k = k0 + n,
/// k0 = (0.15/0.25)², ss = 4·0.15² + Σ(y − ȳ)² + k0·n/k·ȳ²; its `ppf([0.05, 0.5, 0.95])`, and
/// `exp` of it. A grid of 4001 means and 2001 scatters has 1.1206, 1.2296, 1.3481.
#[test]
fn drying_is_learned_as_by_the_library_and_read_by_the_shop() {
    let mut shop = Shop::new();
    for hours in ["7.2 h", "7.8 h"] {
        shop.dried(hours);
    }
    let early = shop.lesson("drying");
    assert!(!early.suggests(), "two batches suggest nothing");
    for hours in ["6.9 h", "7.5 h", "8.1 h"] {
        shop.dried(hours);
    }
    let lesson = shop.lesson("drying");
    let wanted = [1.121_050_6, 1.229_564_06, 1.348_581_21];
    for (found, wanted) in lesson.now().into_iter().zip(wanted) {
        assert!(
            (found - wanted).abs() < 1e-6,
            "{found} in place of {wanted}"
        );
    }
    let text = accepted("", &lesson).expect("accepted");
    assert!(text.contains("[learned.drying]\nfactor = 1.23\n"), "{text}");
    let learned = shop_of(&text).learned.drying.expect("read");
    let [low, likely, high] = [1.121, 1.23, 1.349];
    assert_eq!(
        [learned.low(), learned.likely(), learned.high()],
        [low, likely, high]
    );
}

/// Three pours against the book and three against a plan that had 1.2 in it already, all at 240 s:
/// six that were 1.2 times the book, however they were planned.
#[test]
fn what_a_plan_had_of_the_shops_own_is_not_learned_twice() {
    let (mut mixed, mut plain) = (Shop::new(), Shop::new());
    for _ in 0..3 {
        mixed.pour(8.0, 200.0, None, 240.0);
    }
    for _ in 0..3 {
        mixed.pour(8.0, 240.0, Some(1.2), 240.0);
    }
    for _ in 0..6 {
        plain.pour(8.0, 200.0, None, 240.0);
    }
    let (mixed, plain) = (mixed.freezing(), plain.freezing());
    for (one, other) in mixed.now().into_iter().zip(plain.now()) {
        assert!((one - other).abs() < 1e-9, "{one} and {other}");
    }
}

/// Sand that draws a tenth slower than the book's, and a contact half as good: the time of a
/// section is 1.1 for the sand and twice the book's worth for the contact.
#[test]
fn thick_and_thin_castings_tell_sand_and_contact_apart() {
    let worth = contact_worth_mm("A356").expect("in the book");
    let worth = (worth.low() * worth.high()).sqrt();
    let mut shop = Shop::new();
    let (mut thick_only, scatter) = (Shop::new(), [0.93, 1.05, 1.0, 0.97, 1.06, 1.0]);
    for (at, off) in scatter.into_iter().enumerate() {
        for modulus in [2.0, 18.0] {
            let time = 100.0 * (1.1 + 2.0 * worth / modulus) * off;
            shop.pour(modulus, 100.0, None, time);
            if modulus > 10.0 && at < 4 {
                thick_only.pour(modulus, 100.0, None, time);
            }
        }
    }
    let found = apart(&shop.log).expect("read").expect("timed");
    assert!(found.told, "{found:?}");
    assert_eq!(found.moduli_mm, [2.0, 18.0]);
    let [low, likely, high] = found.contact;
    assert!(
        low < 0.5 && 0.5 < high && (0.35..0.7).contains(&likely),
        "{found:?}"
    );
    let [low, _, high] = found.sand.ends;
    assert!(low < 1.1 && 1.1 < high, "{found:?}");
    let text = accepted_contact("", &found).expect("accepted");
    assert!(text.contains("[learned.contact]"), "{text}");
    let read = shop_of(&text).learned.contact.expect("read");
    assert!((read.likely() - likely).abs() < 1e-3);
    let alike = apart(&thick_only.log).expect("read").expect("timed");
    assert!(
        !alike.told,
        "thick ones say nothing of the contact: {alike:?}"
    );
    let error = accepted_contact("", &alike).expect_err("not told");
    assert!(error.to_string().contains("contact"), "{error}");
    assert!(
        alike.thin_mm > 1.0 && alike.thin_mm < 4.0,
        "{}",
        alike.thin_mm
    );
}
