//! All that is given of a heat problem: box, materials, contacts, surroundings, start.

use thiserror::Error;

use crate::grid::Grid;
use crate::material::{Material, MaterialError};

/// A heat problem.
#[derive(Debug, Clone, PartialEq)]
pub struct Case {
    /// The box.
    pub grid: Grid,
    /// Materials, called by their place in this list.
    pub materials: Vec<Material>,
    /// Surroundings inside the box: cells that are not solved, such as air. The first is called by
    /// the number after the last material, and so on.
    pub voids: Vec<Condition>,
    /// What fills each cell: the number of a material, or of a void after them.
    pub cells: Vec<u8>,
    /// Conductance where unlike materials touch; a pair that is not here touches perfectly.
    pub contacts: Vec<Contact>,
    /// Sides of the box: x low, x high, y low, y high, z low, z high.
    pub faces: [Condition; 6],
    /// Temperature of each cell at the start, °C.
    pub start_c: Vec<f32>,
    /// Cells that are not full, where there are any.
    pub partial: Option<Partial>,
}

/// Conductance between two materials.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    /// The two, in any order.
    pub between: [u8; 2],
    /// Conductance, W/(m² K).
    pub w_m2k: f64,
}

/// How a face stands to what lies outside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Condition {
    /// No heat passes, as in a plane of symmetry.
    Insulated,
    /// The face itself is held at a temperature.
    Held {
        /// Temperature of the face, °C.
        celsius: f64,
    },
    /// So much heat comes in; negative goes out.
    Flux {
        /// Heat, W/m².
        w_m2: f64,
    },
    /// Heat goes to surroundings by convection and radiation.
    Exchange {
        /// Coefficient of convection, W/(m² K).
        w_m2k: f64,
        /// Surroundings, °C.
        celsius: f64,
        /// Emissivity from 0 to 1, both ways.
        emissivity: f64,
    },
}

/// Cells that are not full, such as those at the rim of a round body.
#[derive(Debug, Clone, PartialEq)]
pub struct Partial {
    /// Volume of each cell that holds heat, as a share of the whole cell; above 0, and above 1
    /// where a cell stands for a piece of its neighbour too.
    pub filled: Vec<f32>,
    /// Area of the lower face of each cell, along x, y and z, through which heat passes, as a share
    /// of the whole face; above 1 where the way through it is shorter than from middle to middle.
    pub open: [Vec<f32>; 3],
}

/// Most that a share of a cell or a face may come to. A cell at an inner corner may stand for
/// pieces of three neighbours; more is a slip.
pub const MOST_SHARE: f32 = 8.0;

/// What is wrong with a case.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CaseError {
    /// Edges that do not rise.
    #[error("the box along {axis}: it takes at least two edges, each above the one before")]
    Edges {
        /// Which axis.
        axis: char,
    },
    /// A list of another length than the cells.
    #[error("{what} are given for {given} cells, and the box has {cells}")]
    Length {
        /// Which list.
        what: &'static str,
        /// Its length.
        given: usize,
        /// Cells of the box.
        cells: usize,
    },
    /// A material that is not sound.
    #[error(transparent)]
    Material(#[from] MaterialError),
    /// Too many of them for a number in a byte.
    #[error("{count} materials and voids: at most 250 fit")]
    Many {
        /// How many there are.
        count: usize,
    },
    /// A cell of a number that stands for nothing.
    #[error("cell at {} is filled with number {number}, which is no material", mm(*at_mm))]
    Unknown {
        /// Middle of the cell.
        at_mm: [f64; 3],
        /// The number.
        number: u8,
    },
    /// Nothing to solve.
    #[error("no cell holds a material: fill the box first")]
    Empty,
    /// A temperature that is none.
    #[error("cell at {} has no temperature to start from", mm(*at_mm))]
    Start {
        /// Middle of the cell.
        at_mm: [f64; 3],
    },
    /// A contact that is none.
    #[error("contact {between:?}: two unlike materials and a conductance above zero")]
    Contact {
        /// The pair.
        between: [u8; 2],
    },
    /// A condition out of range.
    #[error(
        "{place}: temperatures above -273.15 °C, coefficients not below zero, emissivity 0 to 1"
    )]
    Condition {
        /// Which face or void.
        place: String,
    },
    /// A share out of range.
    #[error(
        "cell at {} is filled or open by a share that is not within 0 to {MOST_SHARE}",
        mm(*at_mm)
    )]
    Share {
        /// Middle of the cell.
        at_mm: [f64; 3],
    },
}

/// Names of the six sides, as errors and files say them.
pub const FACES: [&str; 6] = ["x low", "x high", "y low", "y high", "z low", "z high"];

/// Absolute zero, °C.
pub const ZERO_K: f64 = -273.15;

/// Most materials and voids together: numbers are bytes, a few of which are kept back.
const MOST_NUMBERS: usize = 250;

impl Case {
    /// A box of one material at one temperature, insulated all round.
    pub fn filled(grid: Grid, material: Material, celsius: f32) -> Case {
        let cells = grid.cells();
        Case {
            grid,
            materials: vec![material],
            voids: Vec::new(),
            cells: vec![0; cells],
            contacts: Vec::new(),
            faces: [Condition::Insulated; 6],
            start_c: vec![celsius; cells],
            partial: None,
        }
    }

    /// The material of a cell, unless it is a void.
    pub fn material(&self, cell: usize) -> Option<&Material> {
        self.materials.get(usize::from(self.cells[cell]))
    }

    /// Volume of a cell that holds heat, m³.
    pub fn volume(&self, cell: usize) -> f64 {
        let whole = self.grid.volume(self.grid.place(cell));
        let filled = self.partial.as_ref().map(|partial| partial.filled[cell]);
        whole * filled.map_or(1.0, f64::from)
    }

    /// Volumes that hold heat of the cells of a row, m³.
    pub fn volumes(&self, [y, z]: [usize; 2]) -> impl Iterator<Item = f64> {
        let area = self.grid.width(1, y) * self.grid.width(2, z);
        let first = self.grid.index([0, y, z]);
        (0..self.grid.counts()[0]).map(move |x| {
            let filled = (self.partial.as_ref()).map_or(1.0, |p| f64::from(p.filled[first + x]));
            self.grid.width(0, x) * area * filled
        })
    }

    /// Whether a cell is full and open on all its sides.
    pub fn is_whole(&self, cell: usize) -> bool {
        let Some(partial) = &self.partial else {
            return true;
        };
        let place = self.grid.place(cell);
        let counts = self.grid.counts();
        let mut away = 1;
        partial.filled[cell] == 1.0
            && (0..3).all(|axis| {
                let open = &partial.open[axis];
                let above = place[axis] + 1 == counts[axis] || open[cell + away] == 1.0;
                away *= counts[axis];
                above && open[cell] == 1.0
            })
    }

    /// Looks all of it over.
    pub fn check(&self) -> Result<(), CaseError> {
        for (axis, edges) in ['x', 'y', 'z'].into_iter().zip(&self.grid.edges_m) {
            let rising = edges.windows(2).all(|pair| pair[1] > pair[0]);
            if edges.len() < 2 || !rising || edges.iter().any(|edge| !edge.is_finite()) {
                return Err(CaseError::Edges { axis });
            }
        }
        self.materials.iter().try_for_each(Material::check)?;
        self.check_lengths()?;
        self.check_cells()?;
        self.check_contacts()?;
        self.check_conditions()
    }

    fn check_lengths(&self) -> Result<(), CaseError> {
        let cells = self.grid.cells();
        let count = self.materials.len() + self.voids.len();
        if count > MOST_NUMBERS {
            return Err(CaseError::Many { count });
        }
        let mut lists = vec![
            ("fillings", self.cells.len()),
            ("starts", self.start_c.len()),
        ];
        if let Some(partial) = &self.partial {
            lists.push(("shares filled", partial.filled.len()));
            lists.extend(partial.open.iter().map(|open| ("open faces", open.len())));
        }
        match lists.into_iter().find(|(_, given)| *given != cells) {
            Some((what, given)) => Err(CaseError::Length { what, given, cells }),
            None => Ok(()),
        }
    }

    fn check_cells(&self) -> Result<(), CaseError> {
        let numbers = self.materials.len() + self.voids.len();
        let at_mm = |cell| self.grid.centre(self.grid.place(cell)).map(|m| m * 1e3);
        let mut solved = false;
        for (cell, &number) in self.cells.iter().enumerate() {
            if usize::from(number) >= numbers {
                return Err(CaseError::Unknown {
                    at_mm: at_mm(cell),
                    number,
                });
            }
            if usize::from(number) < self.materials.len() {
                solved = true;
                let start = f64::from(self.start_c[cell]);
                if !start.is_finite() || start < ZERO_K {
                    return Err(CaseError::Start { at_mm: at_mm(cell) });
                }
            }
            let shares_fit = self.partial.as_ref().is_none_or(|partial| {
                let open = partial
                    .open
                    .iter()
                    .all(|open| (0.0..=MOST_SHARE).contains(&open[cell]));
                open && partial.filled[cell] > 0.0 && partial.filled[cell] <= MOST_SHARE
            });
            if !shares_fit {
                return Err(CaseError::Share { at_mm: at_mm(cell) });
            }
        }
        if solved {
            Ok(())
        } else {
            Err(CaseError::Empty)
        }
    }

    fn check_contacts(&self) -> Result<(), CaseError> {
        let sound = |contact: &&Contact| {
            let [one, other] = contact.between.map(usize::from);
            let known = one < self.materials.len() && other < self.materials.len();
            known && one != other && contact.w_m2k > 0.0
        };
        match self.contacts.iter().find(|contact| !sound(contact)) {
            Some(contact) => Err(CaseError::Contact {
                between: contact.between,
            }),
            None => Ok(()),
        }
    }

    fn check_conditions(&self) -> Result<(), CaseError> {
        let faces = self
            .faces
            .iter()
            .zip(FACES)
            .map(|(face, name)| (face, name.to_owned()));
        let inside = self.voids.iter().enumerate();
        let voids = inside.map(|(at, condition)| (condition, format!("void {}", at + 1)));
        match faces
            .chain(voids)
            .find(|(condition, _)| !condition.is_sound())
        {
            Some((_, place)) => Err(CaseError::Condition { place }),
            None => Ok(()),
        }
    }
}

impl Condition {
    fn is_sound(&self) -> bool {
        let warm = |celsius: f64| celsius.is_finite() && celsius >= ZERO_K;
        match *self {
            Condition::Insulated => true,
            Condition::Held { celsius } => warm(celsius),
            Condition::Flux { w_m2 } => w_m2.is_finite(),
            Condition::Exchange {
                w_m2k,
                celsius,
                emissivity,
            } => {
                warm(celsius)
                    && w_m2k.is_finite()
                    && w_m2k >= 0.0
                    && (0.0..=1.0).contains(&emissivity)
            }
        }
    }
}

fn mm(at: [f64; 3]) -> String {
    format!("({:.1}, {:.1}, {:.1}) mm", at[0], at[1], at[2])
}
