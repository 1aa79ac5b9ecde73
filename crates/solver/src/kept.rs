//! What a run needs to go on later, as plain lists and as the bytes of a file.
//!
//! A run that goes on from what was kept gives the very answer of one that was never stopped: all
//! that it carries from step to step is here in full precision, in the order of the cells and not
//! of the threads. Bytes are little-endian, each list behind its length, and end with a sum over
//! all before it, so that a file that was cut off is told from a whole one.

use std::io::{ErrorKind, Read, Write};

use thiserror::Error;

use crate::case::{Case, Condition};
use crate::freezing::Freezing;
use crate::run::{End, Mode, Moment, Wish};

/// A run in the middle of its way.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Kept {
    /// Of which case and wish it is.
    pub of: u64,
    /// Time reached, s.
    pub time_s: f64,
    /// Steps so far.
    pub steps: u64,
    /// Stages so far.
    pub stages: u64,
    /// The step to take next, s.
    pub step_s: f64,
    /// Heat in the box at the start, J.
    pub start_j: f64,
    /// Heat that came in through all faces so far, J.
    pub through_j: f64,
    /// Moments kept so far.
    pub moments: Vec<Moment>,
    /// What froze when.
    pub freezing: Freezing,
    /// Temperatures of all cells, °C; none of the reference, which reads them off its heat.
    pub celsius: Vec<f32>,
    /// Heat contents of all cells, J/m³, of the reference.
    pub exact_j_m3: Vec<f64>,
    /// Heat contents of all cells above the base of their material, J/m³, where some slow one needs
    /// them.
    pub slow_j_m3: Vec<f32>,
    /// Heat contents of quick cells above the base of their material, J/m³.
    pub quick_j_m3: Vec<f32>,
    /// What rounding has left of the last change of each quick cell, J/m³.
    pub quick_lost_j_m3: Vec<f32>,
}

/// Why what was kept is of no use.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum KeptError {
    /// Not such a file at all.
    #[error("this is no run kept by this version: take it away to begin anew")]
    Foreign,
    /// Cut off or changed.
    #[error("the kept run is cut off or was changed: take it away to begin anew")]
    Broken,
    /// Another case.
    #[error(
        "the kept run is of another case, or of other wishes for it: take it away to begin anew"
    )]
    OtherCase,
    /// The disk.
    #[error("the kept run cannot be read: {0}")]
    Disk(String),
}

/// What such bytes begin with.
const MARK: &[u8; 16] = b"oddside heat 01\n";

impl Kept {
    /// Writes it as bytes.
    pub fn write_to(&self, to: &mut dyn Write) -> std::io::Result<()> {
        let mut to = Writer {
            to,
            sum: Sum::default(),
        };
        to.bytes(MARK)?;
        to.words(&[self.of, self.steps, self.stages])?;
        to.f64s(&[self.time_s, self.step_s, self.start_j, self.through_j])?;
        to.words(&[self.moments.len() as u64])?;
        for moment in &self.moments {
            to.f64s(&[moment.time_s])?;
            to.list(&moment.celsius)?;
            to.list(&moment.j_m3)?;
        }
        let cells: Vec<u64> = self
            .freezing
            .cells
            .iter()
            .map(|&at| u64::from(at))
            .collect();
        to.words(&[cells.len() as u64])?;
        to.words(&cells)?;
        for list in freezing_lists(&self.freezing) {
            to.list(list)?;
        }
        to.list(&self.celsius)?;
        to.words(&[self.exact_j_m3.len() as u64])?;
        to.f64s(&self.exact_j_m3)?;
        to.list(&self.slow_j_m3)?;
        to.list(&self.quick_j_m3)?;
        to.list(&self.quick_lost_j_m3)?;
        let sum = to.sum.0;
        to.bytes(&sum.to_le_bytes())
    }

    /// Reads bytes that were written so.
    pub fn read_from(from: &mut dyn Read) -> Result<Kept, KeptError> {
        let mut from = Reader {
            from,
            sum: Sum::default(),
        };
        let mark = from.bytes(MARK.len());
        if mark.as_deref() != Ok(MARK.as_slice()) {
            return Err(match mark {
                Err(KeptError::Disk(error)) => KeptError::Disk(error),
                _ => KeptError::Foreign,
            });
        }
        let [of, steps, stages] = [from.word()?, from.word()?, from.word()?];
        let [time_s, step_s, start_j, through_j] =
            [from.f64()?, from.f64()?, from.f64()?, from.f64()?];
        let mut moments = Vec::new();
        for _ in 0..from.word()? {
            moments.push(Moment {
                time_s: from.f64()?,
                celsius: from.list()?,
                j_m3: from.list()?,
            });
        }
        let count = from.word()?;
        let cells = from.numbers(count, u64::from_le_bytes)?;
        let freezing = Freezing {
            cells: cells.into_iter().map(|at| at as u32).collect(),
            begins_s: from.list()?,
            passes_s: from.list()?,
            ends_s: from.list()?,
            gradient_k_m: from.list()?,
            cooling_k_s: from.list()?,
        };
        let celsius = from.list()?;
        let count = from.word()?;
        let kept = Kept {
            of,
            time_s,
            steps,
            stages,
            step_s,
            start_j,
            through_j,
            moments,
            freezing,
            celsius,
            exact_j_m3: from.numbers(count, f64::from_le_bytes)?,
            slow_j_m3: from.list()?,
            quick_j_m3: from.list()?,
            quick_lost_j_m3: from.list()?,
        };
        let sum = from.sum.0;
        match from.word()? == sum {
            true => Ok(kept),
            false => Err(KeptError::Broken),
        }
    }
}

/// Says of which case and wish a run is: the same for the same, and hardly ever for another.
pub fn mark_of(case: &Case, wish: &Wish) -> u64 {
    let mut sum = Sum::default();
    for edges in &case.grid.edges_m {
        sum.f64s(edges);
        sum.f64s(&[edges.len() as f64]);
    }
    for material in &case.materials {
        for knot in &material.knots {
            sum.f64s(&[knot.celsius, knot.j_m3, knot.w_mk, knot.solid]);
        }
        sum.f64s(&[material.knots.len() as f64]);
    }
    for condition in case.voids.iter().chain(&case.faces) {
        sum.f64s(&match *condition {
            Condition::Insulated => [0.0; 4],
            Condition::Held { celsius } => [1.0, celsius, 0.0, 0.0],
            Condition::Flux { w_m2 } => [2.0, w_m2, 0.0, 0.0],
            Condition::Exchange {
                w_m2k,
                celsius,
                emissivity,
            } => [3.0, w_m2k, celsius, emissivity],
        });
    }
    for contact in &case.contacts {
        sum.bytes(&contact.between);
        sum.f64s(&[contact.w_m2k]);
    }
    sum.bytes(&case.cells);
    sum.f32s(&case.start_c);
    if let Some(partial) = &case.partial {
        sum.f32s(&partial.filled);
        partial.open.iter().for_each(|open| sum.f32s(open));
    }
    let (end, latest_s) = match wish.end {
        End::At { s } => (0.0, s),
        End::Solid { latest_s } => (1.0, latest_s),
    };
    let mode = match wish.mode {
        Mode::Reference => 0.0,
        Mode::Multirate => 1.0,
    };
    let longest_s = wish.longest_step_s.unwrap_or(0.0);
    sum.f64s(&[mode, end, latest_s, longest_s, wish.passing_share]);
    sum.bytes(&[u8::from(wish.early_contact)]);
    sum.f64s(&wish.moments_s);
    sum.0
}

fn freezing_lists(freezing: &Freezing) -> [&[f32]; 5] {
    [
        &freezing.begins_s,
        &freezing.passes_s,
        &freezing.ends_s,
        &freezing.gradient_k_m,
        &freezing.cooling_k_s,
    ]
}

/// A sum over bytes by Fowler, Noll and Vo (FNV-1a, 64 bits, constants from memory): it guards
/// against slips, not against malice.
struct Sum(u64);

impl Default for Sum {
    fn default() -> Sum {
        Sum(0xcbf2_9ce4_8422_2325)
    }
}

impl Sum {
    fn bytes(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
        }
    }

    fn f64s(&mut self, numbers: &[f64]) {
        numbers.iter().for_each(|n| self.bytes(&n.to_le_bytes()));
    }

    fn f32s(&mut self, numbers: &[f32]) {
        numbers.iter().for_each(|n| self.bytes(&n.to_le_bytes()));
    }
}

struct Writer<'to> {
    to: &'to mut dyn Write,
    sum: Sum,
}

impl Writer<'_> {
    fn bytes(&mut self, bytes: &[u8]) -> std::io::Result<()> {
        self.sum.bytes(bytes);
        self.to.write_all(bytes)
    }

    fn words(&mut self, words: &[u64]) -> std::io::Result<()> {
        let mut words = words.iter();
        words.try_for_each(|word| self.bytes(&word.to_le_bytes()))
    }

    fn f64s(&mut self, numbers: &[f64]) -> std::io::Result<()> {
        let mut numbers = numbers.iter();
        numbers.try_for_each(|number| self.bytes(&number.to_le_bytes()))
    }

    fn list(&mut self, numbers: &[f32]) -> std::io::Result<()> {
        self.words(&[numbers.len() as u64])?;
        let mut numbers = numbers.iter();
        numbers.try_for_each(|number| self.bytes(&number.to_le_bytes()))
    }
}

struct Reader<'from> {
    from: &'from mut dyn Read,
    sum: Sum,
}

impl Reader<'_> {
    /// Takes no more memory than there are bytes, whatever length a broken file claims.
    fn bytes(&mut self, count: usize) -> Result<Vec<u8>, KeptError> {
        let mut bytes = Vec::new();
        match self.from.take(count as u64).read_to_end(&mut bytes) {
            Ok(read) if read == count => {
                self.sum.bytes(&bytes);
                Ok(bytes)
            }
            Ok(_) => Err(KeptError::Broken),
            Err(error) if error.kind() == ErrorKind::UnexpectedEof => Err(KeptError::Broken),
            Err(error) => Err(KeptError::Disk(error.to_string())),
        }
    }

    fn numbers<Number, const BYTES: usize>(
        &mut self,
        count: u64,
        of: fn([u8; BYTES]) -> Number,
    ) -> Result<Vec<Number>, KeptError> {
        let bytes = usize::try_from(count)
            .ok()
            .and_then(|count| count.checked_mul(BYTES));
        let bytes = self.bytes(bytes.ok_or(KeptError::Broken)?)?;
        Ok(bytes.as_chunks().0.iter().map(|chunk| of(*chunk)).collect())
    }

    fn word(&mut self) -> Result<u64, KeptError> {
        let words = self.numbers(1, u64::from_le_bytes)?;
        words.first().copied().ok_or(KeptError::Broken)
    }

    fn f64(&mut self) -> Result<f64, KeptError> {
        Ok(f64::from_bits(self.word()?))
    }

    fn list(&mut self) -> Result<Vec<f32>, KeptError> {
        let count = self.word()?;
        self.numbers(count, f32::from_le_bytes)
    }
}
