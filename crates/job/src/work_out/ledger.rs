//! What has been worked out so far: figures, choices, remarks, and the sources they rest on.

use measure::source::Law;
use measure::text::shown::Rounding;
use metal::alloy::Caution;
use metal::scrap::Origin;

use crate::amount::Amount;
use crate::job::Job;
use crate::job_file::Serves;
use crate::plan::{Choice, Figure};
use crate::remark::Remark;
use crate::remark::of_metal::MetalFact;
use crate::remark::of_pattern::PatternFact;
use crate::words::said::Said;
use crate::work_out::told::Told;

/// The ledger of a plan.
#[derive(Default)]
pub(super) struct Ledger {
    pub(super) figures: Vec<Figure>,
    pub(super) choices: Vec<Choice>,
    pub(super) remarks: Vec<Remark>,
    pub(super) sources: Vec<String>,
}

/// A figure on its way into the ledger.
pub(super) struct Entry {
    pub(super) name: &'static str,
    pub(super) amount: Amount,
    pub(super) rounding: Rounding,
    pub(super) law: &'static Law,
    pub(super) answer: Option<&'static str>,
    pub(super) asked: Vec<(&'static str, String)>,
    pub(super) in_part: bool,
    pub(super) inputs: Vec<(String, String)>,
    pub(super) sources: Vec<String>,
    pub(super) because: Option<Said>,
}

impl Entry {
    /// A figure rounded to the nearest, with the law's own sources only.
    pub(super) fn new(name: &'static str, amount: Amount, law: &'static Law) -> Entry {
        Entry {
            name,
            amount,
            rounding: Rounding::Nearest,
            law,
            answer: None,
            asked: Vec::new(),
            in_part: false,
            inputs: Vec::new(),
            sources: Vec::new(),
            because: None,
        }
    }

    /// What goes into the law, under the key by which its reckoner asks for it.
    pub(super) fn input(mut self, key: &'static str, told: Told) -> Entry {
        self.inputs.push((key.to_owned(), told.shown));
        self.asked.push((key, told.asked));
        self
    }

    /// What stands beside the inputs for people, and is none of them.
    pub(super) fn beside(mut self, words: &str, value: impl Into<String>) -> Entry {
        self.inputs.push((words.to_owned(), value.into()));
        self
    }

    /// Says that the law gives a part of the figure only; the rest is told beside.
    pub(super) fn in_part(mut self) -> Entry {
        self.in_part = true;
        self
    }

    /// The answer of the reckoner that this figure is, where it is not the first.
    pub(super) fn answer(mut self, name: &'static str) -> Entry {
        self.answer = Some(name);
        self
    }

    pub(super) fn seen(mut self, keys: &[String]) -> Entry {
        self.sources.extend_from_slice(keys);
        self
    }

    pub(super) fn up(mut self) -> Entry {
        self.rounding = Rounding::Up;
        self
    }

    pub(super) fn because(mut self, said: Said) -> Entry {
        self.because = Some(said);
        self
    }
}

impl Ledger {
    /// Writes a figure and gathers its sources.
    pub(super) fn write(&mut self, entry: Entry) {
        let of_law = entry.law.sources.iter().map(|key| (*key).to_owned());
        let mut sources = Vec::new();
        for key in of_law.chain(entry.sources) {
            if !sources.contains(&key) {
                sources.push(key);
            }
        }
        for key in sources
            .iter()
            .filter(|key| !self.sources.contains(key))
            .cloned()
            .collect::<Vec<_>>()
        {
            self.sources.push(key);
        }
        self.figures.push(Figure {
            name: entry.name,
            amount: entry.amount,
            rounding: entry.rounding,
            law: entry.law,
            answer: entry.answer,
            asked: entry.asked,
            in_part: entry.in_part,
            inputs: entry.inputs,
            sources,
            because: entry.because,
        });
    }

    /// Writes a choice.
    pub(super) fn choose(&mut self, name: &'static str, chosen: Said, because: Said) {
        self.choices.push(Choice {
            name,
            chosen,
            because,
        });
    }

    /// Writes a remark.
    pub(super) fn note(&mut self, fact: impl Into<Remark>) {
        self.remarks.push(fact.into());
    }

    /// The cautions of the metal and of what the casting has to serve for.
    pub(super) fn cautions(&mut self, job: &Job) {
        let alloy = job.alloy;
        let may_hold_lead = alloy
            .cautions
            .iter()
            .any(|c| matches!(c, Caution::Lead | Caution::UnknownScrap));
        let poisons = |origin: &&Origin| !origin.may_hold.is_empty();
        let may_hold_lead = may_hold_lead || job.scrap.iter().any(poisons);
        if job.serves == Serves::Food && (may_hold_lead || job.form.is_dirty()) {
            self.note(MetalFact::LeadInFood);
        }
        if !matches!(job.serves, Serves::Ornament | Serves::Machine) {
            self.note(MetalFact::Serves(job.serves));
        }
        for caution in &alloy.cautions {
            self.note(MetalFact::Metal(*caution));
        }
        self.note(PatternFact::NotLookedAt);
    }
}
