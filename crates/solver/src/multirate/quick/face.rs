//! A face of a quick cell whose conductance is worked out by itself.

/// A face: which cell and side, and what lies between.
#[derive(Debug, Clone, Copy)]
pub struct Face {
    /// Where the cell stands packed.
    pub from: u32,
    /// Where the cell stands with a rim.
    pub here: u32,
    /// Where its neighbour stands with a rim.
    pub there: u32,
    /// What lies between, in the list of those.
    pub way: u32,
    /// Which of the six sides.
    pub side: u8,
}

/// What lies between the middles of two cells, in single precision and for a unit volume. Most
/// faces of a box share a few of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    /// Whether both are of one material.
    pub alike: bool,
    /// Area over volume, 1/m.
    pub area: f32,
    /// From the middle of the cell to the face, m.
    pub here_m: f32,
    /// From the face to the middle of the neighbour, m.
    pub there_m: f32,
    /// Resistance of the contact, m² K/W.
    pub contact: f32,
    /// How far heat comes into either side at first, m for a root of a second.
    pub reach: [f32; 2],
    /// Conductivity of the neighbour where it never changes, W/(m K).
    pub there_w_mk: Option<f32>,
}

/// How many of the newest are looked through for one that is the same: as many as a layer of cells
/// between two materials has on an even grid, with some to spare.
const LOOKED_BACK: usize = 32;

/// Where something stands in a list of what is much the same all over the box; it is added where
/// none of the newest is the same.
pub fn number_of<Known: PartialEq>(list: &mut Vec<Known>, wanted: Known) -> u32 {
    let first = list.len().saturating_sub(LOOKED_BACK);
    match list[first..].iter().position(|known| *known == wanted) {
        Some(at) => (first + at) as u32,
        None => {
            list.push(wanted);
            list.len() as u32 - 1
        }
    }
}

impl Way {
    /// Heat for each kelvin through a face, W/(m³ K), with the conductivities of the box, at a root
    /// of the time since contact.
    #[inline(always)]
    pub fn w_k(&self, face: &Face, w_mk: &[f32], root_s: f32) -> f32 {
        let here = w_mk[face.here as usize];
        let there = match self.there_w_mk {
            Some(steady) => steady,
            None => w_mk[face.there as usize],
        };
        if self.alike {
            return self.area * 0.5 * (here + there) / (self.here_m + self.there_m);
        }
        let here_m = self.here_m.min(self.reach[0] * root_s);
        let there_m = self.there_m.min(self.reach[1] * root_s);
        let both = here * there;
        let resisted = here_m * there + there_m * here + self.contact * both;
        self.area * both / resisted
    }
}
