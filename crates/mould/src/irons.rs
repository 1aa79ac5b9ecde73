//! Which of one's own irons and bricks to lay on the cope.

use measure::matter::Mass;

/// One piece of the shop's own weights.
#[derive(Clone, Debug, PartialEq)]
pub struct Iron {
    /// What it is called in the shop: "anvil", "sash weight".
    pub name: String,
    /// Its mass.
    pub mass: Mass,
}

/// The fewest pieces that weigh at least so much, and of those the lightest choice; nothing where
/// all of them together are too light.
///
/// Up to sixteen pieces every choice is tried; a larger heap is taken from the heaviest down,
/// which is never too light.
pub fn enough(own: &[Iron], wanted: Mass) -> Option<Vec<&Iron>> {
    if wanted <= Mass::ZERO {
        return Some(Vec::new());
    }
    let total: Mass = own.iter().map(|iron| iron.mass).sum();
    if total < wanted {
        return None;
    }
    let mut sorted: Vec<&Iron> = own.iter().collect();
    sorted.sort_by(|a, b| {
        b.mass
            .as_kg()
            .total_cmp(&a.mass.as_kg())
            .then(a.name.cmp(&b.name))
    });
    match own.len() <= MOST_TRIED {
        true => best_choice(&sorted, wanted),
        false => Some(heaviest_first(&sorted, wanted)),
    }
}

/// Two to this power of choices take some milliseconds.
const MOST_TRIED: usize = 16;

fn best_choice<'a>(sorted: &[&'a Iron], wanted: Mass) -> Option<Vec<&'a Iron>> {
    let chosen = |choice: u32| {
        sorted
            .iter()
            .enumerate()
            .filter(move |(place, _)| choice >> place & 1 == 1)
    };
    let mass = |choice: u32| chosen(choice).map(|(_, iron)| iron.mass).sum::<Mass>();
    let by_count_then_mass = |a: &u32, b: &u32| {
        a.count_ones()
            .cmp(&b.count_ones())
            .then(mass(*a).as_kg().total_cmp(&mass(*b).as_kg()))
    };
    let best = (1u32..1 << sorted.len())
        .filter(|&choice| mass(choice) >= wanted)
        .min_by(by_count_then_mass)?;
    Some(chosen(best).map(|(_, iron)| *iron).collect())
}

fn heaviest_first<'a>(sorted: &[&'a Iron], wanted: Mass) -> Vec<&'a Iron> {
    let mut laid = Mass::ZERO;
    let needed = sorted.iter().take_while(|iron| {
        let more = laid < wanted;
        laid += iron.mass;
        more
    });
    needed.copied().collect()
}
