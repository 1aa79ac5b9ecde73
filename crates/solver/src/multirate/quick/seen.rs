//! What is read off quick cells to write down what they pass.

use pulp::Simd;

use super::{Filling, Quick, Stretch};
use crate::multirate::wide::{LANES, Wide, load};

impl Quick {
    /// Whether a cell of a stretch is of a material.
    pub fn holds(&self, stretch: &Stretch, cell: usize, material: u8) -> bool {
        match stretch.filling {
            Filling::One(one) => one == material,
            Filling::Several(mix) => self.mixes[mix as usize].numbers[cell] == material,
        }
    }

    /// Heat content of a cell above the base of its material, J/m³, at the start of a step, and
    /// what the step adds to it at its end.
    #[inline(always)]
    pub fn heat_of(&self, from: usize) -> (f32, f32) {
        let (block, lane) = (&self.blocks[from / LANES], from % LANES);
        let change = block.change(self.newest)[lane] + self.lost[from / LANES][lane];
        (block.heat[lane], change)
    }

    /// The blocks of a stretch: register `i` of each before and after a step, to the last digit as
    /// its end leaves it, or what lies between two steps would be seen by neither.
    #[inline(always)]
    pub fn heats<S: Simd>(
        &self,
        simd: S,
        stretch: &Stretch,
        i: usize,
    ) -> impl Iterator<Item = (Wide<S>, Wide<S>)> {
        let blocks = self.blocks[stretch.blocks()].iter();
        let lost = self.lost[stretch.blocks()].iter();
        blocks.zip(lost).map(move |(block, lost)| {
            let before = load(simd, &block.heat, i);
            let change = load(simd, block.change(self.newest), i) + load(simd, lost, i);
            (before, before + change)
        })
    }
}
