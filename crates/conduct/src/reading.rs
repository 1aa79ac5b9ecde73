//! From the text of a file to a case that is complete and checked.

use solver::budget::{Estimate, MOST_BYTES, TooLarge, estimate, within};
use solver::case::{Case, CaseError, Contact};
use solver::grid::Grid;
use solver::material::{Freezes, Knot, Material, Phase};
use solver::run::{End, Mode, Wish};
use thiserror::Error;

use crate::case_file::{
    CaseFile, ExpectFile, MaterialFile, ModeFile, PhaseFile, PieceFile, RunFile,
};
use crate::filling::fillings;
use crate::shape::axis;
use crate::sides::{condition, conditions, images};

/// A case with what is to be told of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Bare {
    /// What it is.
    pub title: String,
    /// More about it.
    pub about: String,
    /// The case.
    pub case: Case,
    /// How it is run.
    pub wish: Wish,
    /// How many times the box stands for itself, by its planes of symmetry.
    pub images: f64,
    /// Places with their names, m.
    pub probes: Vec<(String, [f64; 3])>,
    /// Lines with their names.
    pub fronts: Vec<(String, Line)>,
    /// What should come out.
    pub expects: Vec<ExpectFile>,
}

impl Bare {
    /// What its run takes of this machine before it is begun, roughly.
    pub fn takes(&self) -> Estimate {
        estimate(
            self.case.grid.cells(),
            self.wish.mode,
            self.wish.moments_s.len(),
        )
    }
}

/// A line of cells along an axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// The axis.
    pub axis: usize,
    /// A cell on it.
    pub cell: [usize; 3],
    /// What is told of it.
    pub told: Told,
}

/// What is told of a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Told {
    /// How much of a material is solid.
    Solid(u8),
    /// Where a temperature is first passed, °C.
    Passing(f64),
}

/// What is wrong with a file.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CaseFileError {
    /// Not the language or not the keys; says the line.
    #[error("{0}")]
    Text(String),
    /// Pieces of an axis that do not follow on each other.
    #[error(
        "[box] {axis}: each piece takes at least one cell, ends beyond the one before, and has a \
         widening between 0.5 and 2"
    )]
    Pieces {
        /// The axis.
        axis: char,
    },
    /// More cells than fit.
    #[error(transparent)]
    TooLarge(#[from] TooLarge),
    /// A material given in none or two of the three ways.
    #[error(
        "[materials.{name}]: give either plain, or solid, liquid, latent_j_m3 and solidus_c, or table"
    )]
    Material {
        /// Its name.
        name: String,
    },
    /// A condition given in none or two of the ways.
    #[error("{place}: give held_c, or flux_w_m2, or w_m2k with surroundings_c, or nothing at all")]
    Condition {
        /// Where it stands.
        place: String,
    },
    /// A plane of symmetry that cannot be one.
    #[error(
        "[box] mirrored: {side} is named twice, has the side across mirrored too, or has a \
         condition under [faces]; no heat crosses a mirrored side"
    )]
    Mirrored {
        /// The side.
        side: &'static str,
    },
    /// A name that is not in the file.
    #[error("{place}: there is no \"{name}\" in this file, there are {known}")]
    Unknown {
        /// Where it stands.
        place: String,
        /// The name.
        name: String,
        /// What there is.
        known: String,
    },
    /// A filling with two shapes or without a start.
    #[error("[[fill]] {number}: a filling has one shape at most, and a material has a start_c")]
    Fill {
        /// Which, from 1.
        number: usize,
    },
    /// A cell that nothing fills.
    #[error("nothing fills the cell at ({0:.1}, {1:.1}, {2:.1}) mm: fill the whole box first",
        at_mm[0], at_mm[1], at_mm[2])]
    Hole {
        /// Its middle.
        at_mm: [f64; 3],
    },
    /// No end or two of them.
    #[error("[run]: give either until_s or until_solid_s")]
    End,
    /// A place outside the box.
    #[error("{place}: the point lies outside the box")]
    Outside {
        /// Where it stands.
        place: String,
    },
    /// A line that tells nothing or two things.
    #[error("[[front]] \"{name}\": give either material or celsius")]
    Front {
        /// Its name.
        name: String,
    },
    /// An expectation of nothing, of two things or at no moment.
    #[error("[[expect]] {number}: one of probe, front, figure, and at_s one of the moments_s")]
    Expect {
        /// Which, from 1.
        number: usize,
    },
    /// What the solver has against it.
    #[error(transparent)]
    Case(#[from] CaseError),
}

/// Reads a file.
pub fn read(text: &str) -> Result<Bare, CaseFileError> {
    let file: CaseFile =
        toml::from_str(text).map_err(|error| CaseFileError::Text(error.to_string()))?;
    let wish = wish(&file.run, cells(&file))?;
    let grid = grid(&file, &wish)?;
    let case = case(&file, grid)?;
    case.check()?;
    let probes = probes(&file, &case)?;
    let fronts = fronts(&file, &case)?;
    check_expects(&file, &wish)?;
    let images = images(&file);
    Ok(Bare {
        title: file.title,
        about: file.about,
        case,
        wish,
        images,
        probes,
        fronts,
        expects: file.expect,
    })
}

/// Up to so many cells a case runs in plain steps of double precision where its file names no
/// scheme: that takes moments, and single precision would lose a ten-thousandth of the heat of a
/// bar that has nearly come to rest.
const FEW_CELLS: usize = 2_000;

fn wish(run: &RunFile, cells: usize) -> Result<Wish, CaseFileError> {
    let end = match (run.until_s, run.until_solid_s) {
        (Some(s), None) => End::At { s },
        (None, Some(latest_s)) => End::Solid { latest_s },
        _ => return Err(CaseFileError::End),
    };
    let most_bytes = run
        .most_gib
        .map_or(MOST_BYTES, |gib| gib * 1024.0_f64.powi(3));
    Ok(Wish {
        mode: match run.mode {
            Some(ModeFile::Multirate) => Mode::Multirate,
            Some(ModeFile::Reference) => Mode::Reference,
            None if cells <= FEW_CELLS => Mode::Reference,
            None => Mode::Multirate,
        },
        moments_s: run.moments_s.clone(),
        longest_step_s: run.longest_step_s,
        early_contact: run.early_contact,
        most_bytes,
        ..Wish::until(end)
    })
}

/// Cells of a case, counted before anything is laid out, so that a slip of the pen takes no memory.
fn cells(file: &CaseFile) -> usize {
    let axes = [&file.grid.x, &file.grid.y, &file.grid.z];
    let counts = axes.map(|pieces| {
        let cells = pieces.iter().map(|piece| piece.cells);
        cells.fold(0_usize, usize::saturating_add)
    });
    counts.into_iter().fold(1, usize::saturating_mul)
}

fn grid(file: &CaseFile, wish: &Wish) -> Result<Grid, CaseFileError> {
    let moments = wish.moments_s.len();
    within(cells(file), wish.mode, moments, wish.most_bytes)?;
    let axes = [
        ('x', &file.grid.x),
        ('y', &file.grid.y),
        ('z', &file.grid.z),
    ];
    let mut edges_m = [Vec::new(), Vec::new(), Vec::new()];
    for ((axis, pieces), edges_m) in axes.into_iter().zip(&mut edges_m) {
        *edges_m = edges(pieces).ok_or(CaseFileError::Pieces { axis })?;
    }
    Ok(Grid { edges_m })
}

/// Edges in metres, unless the pieces do not follow on each other.
fn edges(pieces: &[PieceFile]) -> Option<Vec<f64>> {
    let mut edges = vec![0.0];
    for piece in pieces {
        let from = edges[edges.len() - 1];
        let way = piece.to_mm * 1e-3 - from;
        if piece.cells == 0 || way.is_nan() || way <= 0.0 || !(0.5..=2.0).contains(&piece.widening)
        {
            return None;
        }
        let ratio = piece.widening;
        let gone = |cells: usize| match ratio {
            1.0 => cells as f64 / piece.cells as f64,
            _ => (ratio.powf(cells as f64) - 1.0) / (ratio.powf(piece.cells as f64) - 1.0),
        };
        edges.extend((1..=piece.cells).map(|cells| from + way * gone(cells)));
    }
    (edges.len() > 1).then_some(edges)
}

fn case(file: &CaseFile, grid: Grid) -> Result<Case, CaseFileError> {
    let materials = file
        .materials
        .iter()
        .map(|(name, given)| material(name, given));
    let materials = materials.collect::<Result<Vec<_>, _>>()?;
    let voids = file
        .voids
        .iter()
        .map(|(name, given)| condition(&format!("[voids.{name}]"), given));
    let voids = voids.collect::<Result<Vec<_>, _>>()?;
    let (cells, start_c) = fillings(file, &grid)?;
    let contacts = file.contact.iter().map(|contact| {
        let [one, other] = &contact.between;
        let between = [
            material_number(file, "[[contact]]", one)?,
            material_number(file, "[[contact]]", other)?,
        ];
        Ok(Contact {
            between,
            w_m2k: contact.w_m2k,
        })
    });
    let contacts = contacts.collect::<Result<Vec<_>, CaseFileError>>()?;
    Ok(Case {
        grid,
        materials,
        voids,
        cells,
        contacts,
        faces: conditions(file)?,
        start_c,
        partial: None,
    })
}

fn material(name: &str, given: &MaterialFile) -> Result<Material, CaseFileError> {
    let phase = |phase: PhaseFile| Phase {
        j_m3k: phase.j_m3k,
        w_mk: phase.w_mk,
    };
    let freezing = (
        given.solid,
        given.liquid,
        given.latent_j_m3,
        given.solidus_c,
    );
    match (given.plain, freezing, &given.table) {
        (Some(plain), (None, None, None, None), None) => Ok(Material::plain(name, phase(plain))),
        (None, (Some(solid), Some(liquid), Some(latent_j_m3), Some(solidus_c)), None) => {
            let freezes = Freezes {
                solid: phase(solid),
                liquid: phase(liquid),
                latent_j_m3,
                solidus_c,
                liquidus_c: given.liquidus_c.unwrap_or(solidus_c),
            };
            Ok(Material::freezing(name, freezes))
        }
        (None, (None, None, None, None), Some(table)) => {
            let knots = table.iter().map(|knot| Knot {
                celsius: knot.celsius,
                j_m3: knot.j_m3,
                w_mk: knot.w_mk,
                solid: knot.solid,
            });
            Ok(Material {
                name: name.to_owned(),
                knots: knots.collect(),
            })
        }
        _ => Err(CaseFileError::Material {
            name: name.to_owned(),
        }),
    }
}

/// The number of a material by its name: they are counted in the order of their names.
pub fn material_number(file: &CaseFile, place: &str, name: &str) -> Result<u8, CaseFileError> {
    let at = file.materials.keys().position(|known| known == name);
    let at = at.and_then(|at| u8::try_from(at).ok());
    at.ok_or_else(|| {
        let known: Vec<_> = file
            .materials
            .keys()
            .chain(file.voids.keys())
            .cloned()
            .collect();
        CaseFileError::Unknown {
            place: place.to_owned(),
            name: name.to_owned(),
            known: known.join(", "),
        }
    })
}

fn probes(file: &CaseFile, case: &Case) -> Result<Vec<(String, [f64; 3])>, CaseFileError> {
    let probe = |probe: &crate::case_file::ProbeFile| {
        let at_m = probe.at_mm.map(|mm| mm * 1e-3);
        let place = format!("[[probe]] \"{}\"", probe.name);
        match case.grid.cell_at(at_m) {
            Some(_) => Ok((probe.name.clone(), at_m)),
            None => Err(CaseFileError::Outside { place }),
        }
    };
    file.probe.iter().map(probe).collect()
}

fn fronts(file: &CaseFile, case: &Case) -> Result<Vec<(String, Line)>, CaseFileError> {
    let front = |front: &crate::case_file::FrontFile| {
        let place = format!("[[front]] \"{}\"", front.name);
        let cell = case.grid.cell_at(front.through_mm.map(|mm| mm * 1e-3));
        let cell = cell.ok_or(CaseFileError::Outside {
            place: place.clone(),
        })?;
        let told = match (&front.material, front.celsius) {
            (Some(name), None) => Told::Solid(material_number(file, &place, name)?),
            (None, Some(celsius)) => Told::Passing(celsius),
            _ => {
                return Err(CaseFileError::Front {
                    name: front.name.clone(),
                });
            }
        };
        Ok((
            front.name.clone(),
            Line {
                axis: axis(front.along),
                cell,
                told,
            },
        ))
    };
    file.front.iter().map(front).collect()
}

fn check_expects(file: &CaseFile, wish: &Wish) -> Result<(), CaseFileError> {
    let probes: Vec<_> = file.probe.iter().map(|probe| probe.name.clone()).collect();
    let fronts: Vec<_> = file.front.iter().map(|front| front.name.clone()).collect();
    for (number, expect) in file.expect.iter().enumerate() {
        let number = number + 1;
        let named = match (&expect.probe, &expect.front, expect.figure) {
            (Some(name), None, None) => Some((name, &probes)),
            (None, Some(name), None) => Some((name, &fronts)),
            (None, None, Some(_)) => None,
            _ => return Err(CaseFileError::Expect { number }),
        };
        if let Some((name, known)) = named.filter(|(name, known)| !known.contains(name)) {
            let place = format!("[[expect]] {number}");
            let known = known.join(", ");
            return Err(CaseFileError::Unknown {
                place,
                name: name.clone(),
                known,
            });
        }
        let at_moment = |at: f64| wish.moments_s.contains(&at);
        if expect
            .at_s
            .is_some_and(|at| !at_moment(at) || expect.figure.is_some())
        {
            return Err(CaseFileError::Expect { number });
        }
    }
    Ok(())
}
