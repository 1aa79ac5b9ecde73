//! A pattern in the solids that are written: one piece or halves, the oddside, the board, each cut
//! for the printer.

use pattern::boolean::FILM_MM;
use pattern::made::bed::{Bed, on_bed};
use pattern::made::board::{BoardWish as OddsideWish, oddside};
use pattern::made::filament::filament;
use pattern::made::halves::{HalvesError, halved};
use pattern::made::joint::Joint;
use pattern::made::lifting::{Lifted, with_lifting_hole};
use pattern::made::line::{engraved, stations};
use pattern::made::plate::{PlateWish, plate};
use pattern::mesh::Mesh;

use super::joint::sand_around;
use super::{Making, MakingError, Piece, What, pins, printing};
use crate::job::Job;

/// Stations of the height gauge lie about so far apart, mm: a hand's breadth bends less.
const STATION_MM: f64 = 25.0;

/// Floor of an oddside over the pattern, mm: it bears the rammer on the drag (judgement, no
/// source; thinner ones spring, thicker ones cost hours of printing).
const FLOOR_MM: f64 = 8.0;

impl Making {
    /// One piece with the line of the joint, or two halves with pins; cut for the printer.
    pub(super) fn part_it(
        &mut self,
        job: &Job,
        whole: &Mesh,
        joint: &Joint,
        lines: &[Vec<[f64; 3]>],
    ) -> Result<(), MakingError> {
        let wish = &job.making;
        let [low, high] = whole.bounds();
        if let Joint::Flat(joint_mm) = joint {
            let (under, over) = (joint_mm - low[2], high[2] - joint_mm);
            if under.min(over) <= FILM_MM {
                return self.flat_backed(job, whole, joint, over > under);
            }
        }
        self.stations = stations(lines, low[2], STATION_MM);
        if wish.one_piece {
            return self.add(job, What::Pattern, engraved(whole, lines)?.mesh);
        }
        let pins = pins(wish);
        let halves = match halved(whole, joint, Some(&pins)) {
            // Pins that nobody asked for by size are left out where they find no room.
            Err(HalvesError::NoRoom { .. }) if wish.pins_mm.is_none() => {
                self.is_without_pins = true;
                halved(whole, joint, None)?
            }
            other => other?,
        };
        self.pins = halves.pins;
        let drag = self.with_hole(job, &halves.drag, joint, Lifted::Drag)?;
        let cope = self.with_hole(job, &halves.cope, joint, Lifted::Cope)?;
        self.add(job, What::Drag, turned_over(&drag))?;
        self.add(job, What::Cope, cope)
    }

    /// A pattern that ends on the joint, its back on the bed.
    fn flat_backed(
        &mut self,
        job: &Job,
        whole: &Mesh,
        joint: &Joint,
        is_above: bool,
    ) -> Result<(), MakingError> {
        let lifted = if is_above { Lifted::Cope } else { Lifted::Drag };
        let mesh = self.with_hole(job, whole, joint, lifted)?;
        let mesh = if is_above { mesh } else { turned_over(&mesh) };
        self.add(job, What::Pattern, mesh)
    }

    fn with_hole(
        &self,
        job: &Job,
        half: &Mesh,
        joint: &Joint,
        lifted: Lifted,
    ) -> Result<Mesh, MakingError> {
        let Some(screw_mm) = job.making.lifting_mm else {
            return Ok(half.clone());
        };
        let taken = self
            .pins
            .map_or_else(Vec::new, |pins| pins.places_mm.to_vec());
        Ok(with_lifting_hole(half, joint, lifted, screw_mm, &taken)?.mesh)
    }

    /// The loose pieces, each as it sits on the pattern.
    pub(super) fn add_loose(&mut self, job: &Job) -> Result<(), MakingError> {
        let meshes: Vec<Mesh> = self.loose.iter().map(|piece| piece.mesh.clone()).collect();
        for (mesh, number) in meshes.into_iter().zip(1..) {
            self.add(job, What::Loose(number), mesh)?;
        }
        Ok(())
    }

    /// The oddside, in which the pattern lies with its loose pieces, and the board, which it is
    /// fixed to without them, where they are wanted.
    pub(super) fn put_on_boards(
        &mut self,
        job: &Job,
        [whole, body]: [&Mesh; 2],
        joint: &Joint,
    ) -> Result<(), MakingError> {
        let sand = sand_around(job, whole);
        let to_wall_mm = sand.to_wall.as_mm();
        if job.making.oddside {
            let [low, high] = whole.bounds();
            let plan_mm = [
                [low[0] - to_wall_mm, low[1] - to_wall_mm],
                [high[0] + to_wall_mm, high[1] + to_wall_mm],
            ];
            let base_mm = FLOOR_MM;
            let made = oddside(whole, joint, &OddsideWish { plan_mm, base_mm })?;
            self.fill = Some(made.fill);
            self.add(job, What::Oddside, turned_over(&made.mesh))?;
        }
        if let Some(board) = &job.making.board {
            let Joint::Flat(joint_mm) = joint else {
                let heights_mm = self.joint_mm;
                return Err(MakingError::NotFlat { heights_mm });
            };
            let wished = PlateWish {
                count: board.count.unwrap_or(job.count),
                thickness_mm: board.thickness_mm,
                size_mm: board.size_mm,
                to_wall_mm,
                between_mm: sand.between.as_mm(),
            };
            let made = plate(body, *joint_mm, &wished)?;
            self.add(job, What::Board, made.mesh)?;
        }
        Ok(())
    }

    /// Adds a solid, in as many pieces as the printer wants.
    fn add(&mut self, job: &Job, what: What, mesh: Mesh) -> Result<(), MakingError> {
        let printing = printing(job);
        let Some(size_mm) = job.making.bed_mm else {
            let filament = filament(&mesh, &printing)?;
            self.pieces.push(Piece {
                what,
                number: None,
                mesh,
                filament,
            });
            return Ok(());
        };
        let bed = Bed {
            size_mm,
            dowel_mm: job.making.pins_mm,
            clearance_mm: job.making.clearance_mm,
        };
        let cut = on_bed(&mesh, &bed)?;
        let is_one = cut.pieces.len() == 1;
        for (piece, number) in cut.pieces.into_iter().zip(1..) {
            let filament = filament(&piece.mesh, &printing)?;
            self.pieces.push(Piece {
                what,
                number: (!is_one).then_some(number),
                mesh: piece.mesh,
                filament,
            });
        }
        self.dowels.0 += cut.dowels.len();
        self.dowels.1 += cut.without_dowel.len();
        Ok(())
    }
}

/// Half a turn about x: the face of the joint then lies on the bed.
fn turned_over(mesh: &Mesh) -> Mesh {
    Mesh {
        points: mesh.points.iter().map(|&[x, y, z]| [x, -y, -z]).collect(),
        triangles: mesh.triangles.clone(),
    }
}
