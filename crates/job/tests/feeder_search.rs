//! The smallest feeder that still feeds, beside the rule of the handbooks.

#![allow(
    clippy::panic,
    clippy::unwrap_used,
    reason = "a helper that fails fails its test"
)]

use job::feeder_search::{FeederAnswer, FeederSearch, Look, smallest_feeder};
use job::file_fault::read;
use job::folder::STARTER_SHOP;
use job::freezing::NoFreeze;
use job::given_part::{GivenPart, given_part};
use job::job::Job;
use job::job_file::JobFile;
use job::shop::ShopFile;

/// Searches for the feeder of a cube of 70 mm.
fn cube(alloy: &str, go_on: &mut dyn FnMut(&Look) -> bool) -> Result<FeederSearch, NoFreeze> {
    let text = format!(
        "name = \"cube\"\n[part]\n[metal]\nalloy = \"{alloy}\"\n\
         [mould]\nflask = \"C\"\n[[solid]]\nkind = \"box\"\nsize = [\"70 mm\", \"70 mm\", \"70 mm\"]\n"
    );
    let typed: JobFile = read("job.toml", &text).unwrap();
    let job = Job::meant(&typed).unwrap();
    let GivenPart::Here(part) = given_part(&typed).unwrap() else {
        panic!("a part without a mesh");
    };
    // A cope in which the feeder has its whole height.
    let high = STARTER_SHOP.replace("cope = \"120 mm\"", "cope = \"200 mm\"");
    let shop: ShopFile = read("shop.toml", &high).unwrap();
    let shop = shop.meant().unwrap();
    smallest_feeder(&job, &shop, &part, None, go_on)
}

/// Without a feeder a cube lacks what its metal loses: 5.2 per cent of 343 cm³ on freezing (the
/// table of the alloy names the sources), a tenth more as a liquid of 40 K superheat, 4 per cent
/// more since the cavity is larger by the contraction, and up to a fifth that runners draw from it.
///
/// A feeder that stands on the cube and freezes before it cannot feed it: its modulus, a fifth of
/// its width where it is as high as wide and cools at its side and top, is that of the cube at the
/// least, whose top it covers: 70³ / (5 · 70²) = 14 mm, and less where it covers less, a sixth of
/// 70 mm at the least.
#[test]
fn the_smallest_feeder_outlasts_its_cube_and_a_twentieth_less_fails() {
    let search = cube("A356", &mut |_| true).unwrap();
    let FeederAnswer::Smallest(smallest) = &search.answer else {
        panic!("{:?}", search.answer);
    };
    let loses_mm3 = 0.052 * 343e3;
    let without = search.lack_mm3[0] / loses_mm3;
    assert!((0.95..1.38).contains(&without), "{without}");
    assert!(
        search.lack_mm3[1] < 0.02 * loses_mm3,
        "{:?}",
        search.lack_mm3
    );
    let modulus_mm = smallest.feeds.diameter.as_mm() / 5.0;
    assert!(modulus_mm > 70.0 / 6.0, "{modulus_mm}");
    assert!(
        (smallest.feeds.diameter / smallest.on_wide.diameter)
            .ln()
            .abs()
            < 0.1
    );
    let (fails, lacks_mm3) = smallest.fails.unwrap();
    let step = smallest.feeds.diameter / fails.diameter;
    assert!(step <= 1.0501, "{step}");
    assert!(lacks_mm3 > smallest.lacks_mm3, "{lacks_mm3}");
    // On either grid every size that was tried is on the side where it belongs.
    for tried in &search.tried {
        let Some(feeder) = tried.feeder else {
            continue;
        };
        let smallest = match tried.narrow {
            true => smallest.feeds,
            false => smallest.on_wide,
        };
        let lacks = (tried.hollows_mm3 + tried.pores_mm3) / loses_mm3;
        let feeds = feeder.diameter.as_mm() > smallest.diameter.as_mm() - 0.01;
        assert_eq!(lacks <= 0.025, feeds, "{lacks} {feeder:?}");
    }
}

#[test]
fn a_stop_is_heeded_at_once() {
    let mut told = 0;
    let stopped = cube("A356", &mut |_| {
        told += 1;
        told < 3
    });
    assert!(stopped.is_err());
    assert_eq!(told, 3);
}
