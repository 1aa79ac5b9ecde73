//! What a heap holds, part by part, and the bounds it is not to pass.

use measure::matter::Mass;

/// What a heap holds. Masses, all dry but for the water.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Heap {
    /// Grains.
    pub sand: Mass,
    /// Clay that still binds.
    pub live_clay: Mass,
    /// Clay that was burnt.
    pub dead_clay: Mass,
    /// Sugar, flour, oil that still binds or burns, without its water.
    pub organic: Mass,
    /// What burnt binder leaves.
    pub ash: Mass,
    /// Grains that came from cores.
    pub core_sand: Mass,
    /// Parting dust.
    pub parting: Mass,
    /// Silt and broken grains.
    pub fines: Mass,
    /// Water.
    pub water: Mass,
}

/// What a heap is not to pass. Shares of the dry heap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Least live clay; nought for a heap that clay does not bind.
    pub live_clay: f64,
    /// Most dead matter: dead clay, ash, fines and parting.
    pub dead: f64,
    /// Most unburnt organic matter: it gives gas.
    pub organic: f64,
}

/// The bound that is passed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passed {
    /// Too little live clay.
    LiveClay,
    /// Too much dead matter.
    Dead,
    /// Too much organic matter.
    Organic,
}

impl Heap {
    /// All of it.
    pub fn total(&self) -> Mass {
        self.dry() + self.water
    }

    /// Without the water.
    pub fn dry(&self) -> Mass {
        self.parts()[..8].iter().map(|(_, mass)| *mass).sum()
    }

    /// What washes out: clay live and dead, ash, silt and parting dust.
    pub fn washable(&self) -> Mass {
        self.live_clay + self.dead()
    }

    /// What neither binds nor is grain.
    pub fn dead(&self) -> Mass {
        self.dead_clay + self.ash + self.fines + self.parting
    }

    /// Every part by its name, the water last.
    pub fn parts(&self) -> [(&'static str, Mass); 9] {
        [
            ("sand", self.sand),
            ("live-clay", self.live_clay),
            ("dead-clay", self.dead_clay),
            ("organic", self.organic),
            ("ash", self.ash),
            ("core-sand", self.core_sand),
            ("parting", self.parting),
            ("fines", self.fines),
            ("water", self.water),
        ]
    }

    /// The first bound that is passed.
    pub fn passed(&self, bounds: &Bounds) -> Option<Passed> {
        let dry = self.dry();
        let beyond = [
            (self.live_clay / dry < bounds.live_clay, Passed::LiveClay),
            (self.dead() / dry > bounds.dead, Passed::Dead),
            (self.organic / dry > bounds.organic, Passed::Organic),
        ];
        let first = beyond.into_iter().find(|(passed, _)| *passed);
        first.map(|(_, which)| which)
    }

    /// Each part multiplied, divided, cut.
    pub fn map(&self, law: impl Fn(Mass) -> Mass) -> Heap {
        self.with(&Heap::default(), |mass, _| law(mass))
    }

    /// Each part joined with that of another heap.
    pub fn with(&self, other: &Heap, law: impl Fn(Mass, Mass) -> Mass) -> Heap {
        Heap {
            sand: law(self.sand, other.sand),
            live_clay: law(self.live_clay, other.live_clay),
            dead_clay: law(self.dead_clay, other.dead_clay),
            organic: law(self.organic, other.organic),
            ash: law(self.ash, other.ash),
            core_sand: law(self.core_sand, other.core_sand),
            parting: law(self.parting, other.parting),
            fines: law(self.fines, other.fines),
            water: law(self.water, other.water),
        }
    }
}
