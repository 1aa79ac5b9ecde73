//! What a draw asks of the skin of a part, as words with places and as files to look at.

use measure::text::rounded;
use metal::least_wall::least_wall;
use pattern::draw::maps::{DRAUGHT_PLAY_DEGREES, Kind, Maps, MapsError, Sought, maps};
use pattern::draw::parting::parting_line;
use pattern::draw::walls::{Corner, Least, Thin};
use pattern::draw::{DrawError, DrawSettings};
use pattern::gltf::{Shown, write_glb};
use pattern::mesh::Mesh;
use pattern::ply_write::{Figures, write_ply};
use pattern::vector::{dot, norm, sub};

use crate::cores_told::{Line, caution, note, place};
use crate::job::Job;
use crate::turning::Turning;
use crate::words::said::Said;

/// Folder beside the job that takes the maps.
pub const MAPS_FOLDER: &str = "draw";

/// Sand between two faces that stands when it is rammed by hand, mm: common practice, no source.
/// With less, sand that stands between the ribs of a grate is told; with more, letters that wash
/// out are not.
const LEAST_SAND_MM: f64 = 3.0;

/// Inside corners that turn by less need no fillet, degrees: the flats of a coarse round hollow
/// meet at up to this.
const FILLET_DEGREES: f64 = 30.0;

/// Places that are told of each kind; the rest are counted.
const PLACES: usize = 3;

/// A place smaller than this share of the largest of its kind is not worth a line; walls that want
/// draught are not if they are together less than a tenth of it of the skin.
const WORTH: f64 = 0.05;

/// The skin of a part judged along the draw in which the job lays it.
#[derive(Clone, Debug)]
pub struct Judged {
    pub(crate) maps: Maps,
    least: Least,
}

/// Judges the skin of the part of a job, its mesh closed and in mm.
///
/// # Errors
///
/// A part that cannot be looked at, or is drawn deeper than the rules of draught go.
pub fn judged(job: &Job, part: &Mesh) -> Result<Judged, MapsError> {
    let settings = DrawSettings::suiting(part);
    let lies = Turning::of(part, job.up);
    let up = lies.drawn_way(1.0);
    let least = Least {
        metal_mm: least_wall(job.alloy.family).value.low().as_mm(),
        sand_mm: LEAST_SAND_MM,
        corner_degrees: FILLET_DEGREES,
    };
    let sought = Sought {
        up,
        level_mm: level(job, part, &lies, &settings)?,
        skin: job.making.skin,
        least,
    };
    let maps = maps(part, &sought, &settings)?;
    Ok(Judged { maps, least })
}

/// Height of the joint along the draw: where the job has it, else at the level of the parting line.
fn level(
    job: &Job,
    part: &Mesh,
    lies: &Turning,
    settings: &DrawSettings,
) -> Result<f64, DrawError> {
    let up = lies.drawn_way(1.0);
    match job.joint {
        Some(joint) => Ok(dot(lies.drawn([0.0, 0.0, joint.as_mm()]), up)),
        None => Ok(parting_line(part, up, settings)?.level.at_mm),
    }
}

/// The worst places of each kind, in words.
pub fn told(judged: &Judged) -> Vec<Line> {
    let walls = &judged.maps.walls;
    let metal = thin("skin-thin-metal", &walls.thin_metal, judged.least.metal_mm);
    let sand = thin("skin-thin-sand", &walls.thin_sand, judged.least.sand_mm);
    let lines = draught(&judged.maps).into_iter().chain(metal).chain(sand);
    let lines = lines.chain(corners(&walls.corners));
    lines.chain(thickest(&judged.maps)).collect()
}

/// Walls that want more draught, in one line: the pattern gives it to them.
fn draught(maps: &Maps) -> Option<Line> {
    let patches = maps.draught.patches.iter();
    let short: Vec<_> = patches
        .filter(|patch| patch.missing_degrees() > DRAUGHT_PLAY_DEGREES)
        .collect();
    let worst = short.first()?;
    let area: f64 = short.iter().map(|patch| patch.area_mm2).sum();
    if area < 0.1 * WORTH * maps.mesh.area() {
        return None;
    }
    let degrees = |angle: f64| format!("{}°", rounded(angle, 2));
    let words = Said::new("skin-draught")
        .with("count", short.len())
        .with("area", cm2(area))
        .with("place", place(worst.centre_mm))
        .with("has", degrees(rounded_to_nought(worst.present_degrees)))
        .with("wants", degrees(worst.wanted_degrees))
        .with("depth", mm(worst.depth_mm));
    Some(note(words))
}

/// A lean that is rounding of the drawing is none.
fn rounded_to_nought(degrees: f64) -> f64 {
    match degrees.abs() < 0.01 {
        true => 0.0,
        false => degrees,
    }
}

fn thin(id: &'static str, places: &[Thin], least_mm: f64) -> Vec<Line> {
    let told = worth_telling(places, least_mm);
    told.into_iter()
        .map(|thin| {
            let words = Said::new(id)
                .with("has", format!("{} mm", rounded(thin.least_mm, 2)))
                .with("least", format!("{} mm", rounded(least_mm, 2)))
                .with("area", cm2(thin.area_mm2))
                .with("place", place(thin.centre_mm));
            caution(words)
        })
        .collect()
}

/// The largest places, the two faces of one wall as one. What is smaller than a square of twice the
/// least thickness is an edge or a tip, no wall.
fn worth_telling(places: &[Thin], least_mm: f64) -> Vec<&Thin> {
    let largest = places.first().map_or(0.0, |thin| thin.area_mm2);
    let least_mm2 = (WORTH * largest).max(4.0 * least_mm * least_mm);
    let mut told: Vec<&Thin> = Vec::new();
    for thin in places.iter().filter(|thin| thin.area_mm2 >= least_mm2) {
        let is_other_face = |told: &&Thin| {
            norm(sub(told.centre_mm, thin.centre_mm)) < 2.0 * thin.least_mm.max(told.least_mm)
        };
        if told.len() < PLACES && !told.iter().any(is_other_face) {
            told.push(thin);
        }
    }
    told
}

/// Corners that want a fillet, in one line with the longest of them.
fn corners(corners: &[Corner]) -> Option<Line> {
    let longest = corners.first()?;
    let length: f64 = corners.iter().map(|corner| corner.length_mm).sum();
    let words = Said::new("skin-corners")
        .with("count", corners.len())
        .with("length", mm(length))
        .with("turn", format!("{:.0}°", longest.turn_degrees))
        .with("place", place(longest.centre_mm));
    Some(note(words))
}

/// The thickest metal: it freezes last, and a feeder has to reach it.
fn thickest(maps: &Maps) -> Option<Line> {
    let balls = maps.ball_mm.iter().zip(0..);
    let found = balls.filter_map(|(ball, facet)| Some(((*ball)?, facet)));
    let (ball, facet): (f64, usize) = found.max_by(|a, b| a.0.total_cmp(&b.0))?;
    let [a, b, c] = maps.mesh.corners(facet);
    let beside = [0, 1, 2].map(|axis| (a[axis] + b[axis] + c[axis]) / 3.0);
    let words = Said::new("skin-thickest")
        .with("ball", format!("{} mm", rounded(ball, 2)))
        .with("place", place(beside));
    Some(note(words))
}

/// The maps as files by name: a polygon file with every figure on the skin, in the axes of the
/// drawing, and a picture in three dimensions of what is wrong where.
pub fn files(judged: &Judged) -> Vec<(String, Vec<u8>)> {
    let maps = &judged.maps;
    let facets = 0..maps.mesh.triangles.len();
    let draught = |which: usize| -> Vec<Option<f64>> {
        let of = |facet| maps.draught_degrees(facet).map(|found| found[which]);
        facets.clone().map(of).collect()
    };
    let figures = [
        figures(
            "held_share",
            facets.clone().map(|facet| Some(maps.held_share(facet))),
        ),
        Figures {
            name: "draught_deg",
            of_facet: draught(0),
        },
        Figures {
            name: "draught_missing_deg",
            of_facet: draught(1),
        },
        figures("metal_mm", maps.walls.metal_mm.iter().copied()),
        figures("ball_mm", maps.ball_mm.iter().copied()),
        figures("sand_mm", maps.walls.sand_mm.iter().copied()),
        figures(
            "corner_deg",
            maps.walls.turn_degrees.iter().map(|turn| Some(*turn)),
        ),
    ];
    vec![
        ("maps.ply".to_owned(), write_ply(&maps.mesh, &figures)),
        ("maps.glb".to_owned(), picture(judged)),
    ]
}

fn figures(name: &'static str, of_facet: impl Iterator<Item = Option<f64>>) -> Figures {
    Figures {
        name,
        of_facet: of_facet.collect(),
    }
}

fn picture(judged: &Judged) -> Vec<u8> {
    let of_kind = |kind: Kind| Mesh {
        points: judged.maps.mesh.points.clone(),
        triangles: (0..judged.maps.mesh.triangles.len())
            .filter(|&facet| judged.maps.kind(facet, &judged.least) == kind)
            .map(|facet| judged.maps.mesh.triangles[facet])
            .collect(),
    };
    let mut meshes = Kind::ALL.map(|kind| (kind, of_kind(kind)));
    meshes
        .iter_mut()
        .for_each(|(_, mesh)| mesh.drop_unused_points());
    let shown = meshes.each_ref().map(|(kind, mesh)| {
        let (name, colour) = look(*kind);
        Shown {
            name,
            mesh,
            colour,
            is_metal: false,
        }
    });
    write_glb(&shown)
}

/// Names in the picture, and colours that differ in lightness from one kind to the next, so that
/// they are told apart without hue.
fn look(kind: Kind) -> (&'static str, [f64; 4]) {
    let (name, [red, green, blue]) = match kind {
        Kind::Held => ("held", [0.05, 0.05, 0.10]),
        Kind::ThinSand => ("thin sand", [0.35, 0.10, 0.30]),
        Kind::ThinMetal => ("thin metal", [0.75, 0.25, 0.05]),
        Kind::ShortOfDraught => ("short of draught", [0.30, 0.55, 0.75]),
        Kind::SharpCorner => ("sharp corner", [0.90, 0.75, 0.25]),
        Kind::Clear => ("clear", [0.86, 0.86, 0.84]),
    };
    (name, [red, green, blue, 1.0])
}

fn cm2(mm2: f64) -> String {
    format!("{} cm²", rounded(mm2 / 100.0, 2))
}

fn mm(length: f64) -> String {
    format!("{length:.0} mm")
}
