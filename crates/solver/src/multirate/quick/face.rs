//! A face of a quick cell whose conductance is worked out by itself.

/// A link in single precision, for a unit volume.
#[derive(Debug, Clone, Copy)]
pub struct Face {
    /// Where the cell stands packed.
    pub from: u32,
    /// Which of the six sides.
    pub side: u8,
    /// Whether both are of one material.
    pub alike: bool,
    /// Where the cell stands with a rim.
    pub here: u32,
    /// Where its neighbour stands with a rim.
    pub there: u32,
    /// Area over volume, 1/m.
    pub area: f32,
    /// From the middle of the cell to the face, m.
    pub here_m: f32,
    /// From the face to the middle of the neighbour, m.
    pub there_m: f32,
    /// Resistance of the contact, m² K/W.
    pub contact: f32,
    /// Conductivity of the neighbour where it never changes, W/(m K).
    pub there_w_mk: Option<f32>,
}

impl Face {
    /// Heat for each kelvin, W/(m³ K), with the conductivities of the box.
    #[inline(always)]
    pub fn w_k(&self, w_mk: &[f32]) -> f32 {
        let here = w_mk[self.here as usize];
        let there = match self.there_w_mk {
            Some(steady) => steady,
            None => w_mk[self.there as usize],
        };
        if self.alike {
            return self.area * 0.5 * (here + there) / (self.here_m + self.there_m);
        }
        let both = here * there;
        let resisted = self.here_m * there + self.there_m * here + self.contact * both;
        self.area * both / resisted
    }
}
