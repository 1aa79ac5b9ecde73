//! The lists of a run on a card: made once, filled from a state, read back into one.

use solver::elsewhere::{State, Unable};
use solver::freezing::Freezing;
use solver::laid::Laid;
use wgpu::Buffer;

use crate::device::Device;
use crate::packed::Packed;
use crate::shape::{AROUND_BYTES, CELL_BYTES, LANE_BYTES, RIM_BYTES, RUN, RUN_BYTES};
use crate::tables::{Tables, across, along, are_plain, axes, factors, links, outers};

/// The lists.
#[derive(Debug)]
pub struct Lists {
    /// Temperatures before and after a step, in turn, and after even and odd stages.
    pub celsius: [Buffer; 2],
    pub stages: [Buffer; 2],
    /// Conductivities and heat contents of swept cells; a few bytes where all are plain.
    pub conducts: Buffer,
    pub swept: Buffer,
    pub classes: Buffer,
    pub runs: Buffer,
    pub kinds: Buffer,
    pub inverses: Buffer,
    pub heats: Buffer,
    pub losts: Buffer,
    /// What a step has changed after even and odd stages.
    pub changes: [Buffer; 2],
    pub flows: Buffer,
    pub written: Buffer,
    pub rims: Buffer,
    pub arounds: Buffer,
    pub links: Buffer,
    pub outers: Buffer,
    pub tables: Buffer,
    pub axes: Buffer,
    pub along: Buffer,
    pub across: Buffer,
    pub factors: Buffer,
    /// Rows of the table of a material.
    pub stride: usize,
    /// Whether all swept materials are plain.
    pub plain: bool,
}

/// What stands where nothing was written down yet: below every time.
const NOTHING: f32 = -1e30;

/// Bytes of all lists of a packed case.
pub fn needed_bytes(laid: &Laid<'_>, packed: &Packed) -> u64 {
    sizes(laid, packed).iter().map(|(_, bytes)| bytes).sum()
}

/// The longest lists: what they hold, and their bytes.
fn sizes(laid: &Laid<'_>, packed: &Packed) -> Vec<(&'static str, u64)> {
    let cells = packed.shape.len() as u64 * CELL_BYTES;
    let lanes = packed.kinds.len() as u64;
    let carried = if are_plain(laid, packed) { 0 } else { cells };
    let arounds = packed.starts.arounds.last().copied().unwrap_or(0);
    vec![
        ("temperatures", cells),
        ("temperatures", cells),
        ("temperatures", cells),
        ("temperatures", cells),
        ("heat contents", carried),
        ("conductivities", carried),
        ("what fills the cells", packed.classes.len() as u64 * 4),
        ("runs of cells", packed.runs.len() as u64 * RUN_BYTES),
        ("what goes in stages", lanes * (6 * 4)),
        ("conductances", lanes * 16),
        ("what froze when", lanes * LANE_BYTES),
        ("rims", packed.rims.len() as u64 * RIM_BYTES),
        ("surroundings", u64::from(arounds) * AROUND_BYTES),
    ]
}

impl Lists {
    /// Makes the lists of a case.
    ///
    /// # Errors
    ///
    /// A list longer than the card takes, or a card without the memory.
    pub fn of(device: &Device, laid: &Laid<'_>, packed: &Packed) -> Result<Lists, Unable> {
        let had_bytes = device.bounds.list_bytes;
        for (what, needed_bytes) in sizes(laid, packed) {
            if needed_bytes > had_bytes {
                return Err(Unable::TooLarge {
                    what,
                    needed_bytes,
                    had_bytes,
                });
            }
        }
        let cells = packed.shape.len() as u64 * CELL_BYTES;
        let lanes = packed.kinds.len() as u64;
        let plain = are_plain(laid, packed);
        let carried = if plain { 4 } else { cells };
        let arounds = packed.starts.arounds.last().copied().unwrap_or(0);
        let tables = Tables::of(laid);
        let list = |name: &str, bytes: u64| device.list(name, bytes);
        // What is looked up whole has at least one entry, however little a case has of it.
        let few = |name: &str, bytes: usize| list(name, bytes.max(64) as u64);
        let lists = Lists {
            celsius: ["celsius", "celsius"].map(|name| list(name, cells)),
            stages: ["even stage", "odd stage"].map(|name| list(name, cells)),
            conducts: list("conductivities", carried),
            swept: list("heat of swept cells", carried),
            classes: few("classes", packed.classes.len() * 4),
            runs: few("runs", packed.runs.len() * RUN_BYTES as usize),
            kinds: list("kinds", (4 * lanes).max(64)),
            inverses: list("inverse volumes", (4 * lanes).max(64)),
            heats: list("heat of staged cells", (4 * lanes).max(64)),
            losts: list("lost in rounding", (4 * lanes).max(64)),
            changes: ["even change", "odd change"].map(|name| list(name, (4 * lanes).max(64))),
            flows: list("conductances", (16 * lanes).max(64)),
            written: list("what froze when", (LANE_BYTES * lanes).max(64)),
            rims: few("rims", packed.rims.len() * RIM_BYTES as usize),
            arounds: few(
                "surroundings of cells",
                arounds as usize * AROUND_BYTES as usize,
            ),
            links: few("links", laid.links.len() * 32),
            outers: few("surroundings", laid.outers.len() * 32),
            tables: few("tables", tables.rows.len() * 16),
            axes: few("axes", axes(laid).len() * 16),
            along: few("weights along rows", packed.shape.pitch * 8),
            across: few("weights across rows", across(laid, packed).len() * 8),
            factors: device.figures("factors", 256),
            stride: tables.stride,
            plain,
        };
        device.put(&lists.classes, 0, &packed.classes);
        device.put(&lists.runs, 0, &packed.runs);
        device.put(&lists.kinds, 0, &packed.kinds);
        device.put(&lists.inverses, 0, &packed.inverses);
        device.put(&lists.rims, 0, &packed.rims);
        device.put(&lists.links, 0, &links(laid));
        device.put(&lists.outers, 0, &outers(laid));
        device.put(&lists.tables, 0, &tables.rows);
        device.put(&lists.axes, 0, &axes(laid));
        device.put(&lists.along, 0, &along(laid, packed));
        device.put(&lists.across, 0, &across(laid, packed));
        device.put(&lists.factors, 0, &factors(laid, packed));
        device.is_well()?;
        Ok(lists)
    }

    /// Fills them from a state, temperatures into the first of both lists.
    pub fn fill(&self, device: &Device, laid: &Laid<'_>, packed: &Packed, state: &State) {
        self.put_cells(device, packed, &self.celsius[0], &state.celsius);
        if !self.plain {
            self.put_cells(device, packed, &self.swept, &state.swept_j_m3);
        }
        let lanes = packed.kinds.len();
        let (mut heats, mut losts) = (vec![0.0; lanes], vec![0.0; lanes]);
        let carried = state.staged_j_m3.iter().zip(&state.lost_j_m3);
        for (lane, (heat, lost)) in packed.lanes().zip(carried) {
            (heats[lane], losts[lane]) = (*heat, *lost);
        }
        device.put(&self.heats, 0, &heats);
        device.put(&self.losts, 0, &losts);
        drop((heats, losts));
        let mut written = vec![[NOTHING; 5]; lanes];
        let freezing = &state.freezing;
        for (entry, lane) in packed.freezing_lanes(laid).enumerate() {
            written[lane] = [
                freezing.begins_s[entry],
                freezing.passes_s[entry],
                freezing.ends_s[entry],
                freezing.gradient_k_m[entry],
                freezing.cooling_k_s[entry],
            ]
            .map(|figure| if figure.is_nan() { NOTHING } else { figure });
        }
        device.put(&self.written, 0, &written);
    }

    /// Reads a state back, with temperatures from the given one of both lists; what came in through
    /// faces before the lists were filled is not in it.
    ///
    /// # Errors
    ///
    /// A card that is no longer there.
    pub fn state(
        &self,
        device: &Device,
        laid: &Laid<'_>,
        packed: &Packed,
        current: usize,
    ) -> Result<State, Unable> {
        let lanes = packed.kinds.len();
        let (mut heats, mut losts) = (vec![0.0_f32; lanes], vec![0.0_f32; lanes]);
        device.take(&self.heats, 0, &mut heats)?;
        device.take(&self.losts, 0, &mut losts)?;
        let staged_j_m3 = packed.lanes().map(|lane| heats[lane]).collect();
        let lost_j_m3 = packed.lanes().map(|lane| losts[lane]).collect();
        drop((heats, losts));
        let mut written = vec![[0.0_f32; 5]; lanes];
        device.take(&self.written, 0, &mut written)?;
        let told = |which: usize| -> Vec<f32> {
            let figures = packed.freezing_lanes(laid).map(|lane| written[lane][which]);
            figures
                .map(|figure| if figure <= NOTHING { f32::NAN } else { figure })
                .collect()
        };
        let freezing = Freezing {
            cells: laid.freezing_cells().collect(),
            begins_s: told(0),
            passes_s: told(1),
            ends_s: told(2),
            gradient_k_m: told(3),
            cooling_k_s: told(4),
        };
        drop(written);
        let arounds = packed.starts.arounds.last().copied().unwrap_or(0) as usize;
        let mut around = vec![[0.0_f32; 8]; arounds];
        device.take(&self.arounds, 0, &mut around)?;
        let through_j = around
            .iter()
            .map(|around| f64::from(around[5]) + f64::from(around[6]))
            .sum();
        Ok(State {
            celsius: self.take_cells(device, packed, &self.celsius[current])?,
            swept_j_m3: match self.plain {
                true => Vec::new(),
                false => self.take_cells(device, packed, &self.swept)?,
            },
            staged_j_m3,
            lost_j_m3,
            freezing,
            through_j,
        })
    }

    /// Puts figures of all cells into a list with its planes before and behind.
    fn put_cells(&self, device: &Device, packed: &Packed, list: &Buffer, cells: &[f32]) {
        let shape = &packed.shape;
        let [along, rows, planes] = shape.counts;
        for first in (0..planes).step_by(PLANES) {
            let these = first..planes.min(first + PLANES);
            let mut padded = vec![0.0_f32; these.len() * shape.plane];
            for (plane, z) in padded.chunks_mut(shape.plane).zip(these) {
                let from = z * rows * along;
                let of_plane = cells[from..from + rows * along].chunks(along);
                for (row, cells) in plane.chunks_mut(shape.pitch).zip(of_plane) {
                    row[..along].copy_from_slice(cells);
                }
            }
            device.put(list, shape.at([0, 0, first]) as u64, &padded);
        }
    }

    fn take_cells(
        &self,
        device: &Device,
        packed: &Packed,
        list: &Buffer,
    ) -> Result<Vec<f32>, Unable> {
        let shape = &packed.shape;
        let [along, rows, planes] = shape.counts;
        let mut cells = Vec::with_capacity(along * rows * planes);
        for first in (0..planes).step_by(PLANES) {
            let these = first..planes.min(first + PLANES);
            let mut padded = vec![0.0_f32; these.len() * shape.plane];
            device.take(list, shape.at([0, 0, first]) as u64, &mut padded)?;
            for plane in padded.chunks(shape.plane) {
                for row in plane.chunks(shape.pitch).take(rows) {
                    cells.extend_from_slice(&row[..along]);
                }
            }
        }
        Ok(cells)
    }
}

/// Planes that are put or read at a time: few calls, and little room beside the lists.
const PLANES: usize = 32;

// A run is as many lanes as the programs take it for.
const _: () = assert!(RUN == 32);
