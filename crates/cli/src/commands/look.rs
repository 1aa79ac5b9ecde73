//! `oddside look MESH`: what a mesh is.

use std::path::Path;
use std::process::ExitCode;

use job::folder::{look_at, shop_above};
use job::job::mesh_unit;
use job::plan::alloy_label;
use job::remark::{Remark, RemarkFile, of_mesh};
use job::words::Language;
use job::words::said::Said;
use measure::length::Volume;
use measure::text::rounded;
use metal::alloys;
use metal::casting_mass::casting_mass;
use pattern::look::{Looked, Verdict};
use serde::Serialize;

use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// Looks and tells.
pub fn run(mesh: &Path, unit: Option<&str>, json: bool) -> Result<ExitCode, Trouble> {
    let unit = unit.map(mesh_unit).transpose().map_err(Trouble::Usage)?;
    let looked = {
        let _working = Working::on("reading the mesh");
        look_at(mesh, unit)
    };
    let looked = match looked {
        Err(error) if json => return Err(Trouble::folder_as_json(error)),
        other => other?,
    };
    let remarks = of_mesh::remarks(&looked);
    if json {
        let remarks = remarks.iter().map(Remark::file).collect();
        let text = serde_json::to_string_pretty(&LookFile::of(&looked, remarks));
        print::out(&(text.unwrap_or_default() + "\n"))?;
    } else {
        tell(mesh, &looked, &remarks, language())?;
    }
    Ok(exit_code(looked.verdict))
}

/// The exit code of a verdict.
pub fn exit_code(verdict: Verdict) -> ExitCode {
    match verdict {
        Verdict::Accepted | Verdict::Healed => ExitCode::SUCCESS,
        Verdict::Refused => ExitCode::from(2),
        Verdict::Ask => ExitCode::from(3),
    }
}

/// The one object that `--json` prints.
#[derive(Serialize)]
struct LookFile {
    verdict: Verdict,
    /// Unit the mesh is drawn in; null while it has to be chosen.
    unit: Option<&'static str>,
    unit_known_by: pattern::unit::UnitBasis,
    unit_choices: Vec<UnitChoice>,
    format: Option<pattern::read::Format>,
    triangles: usize,
    pieces: usize,
    /// Null where the unit is unknown or the skin is open.
    volume_mm3: Option<f64>,
    area_mm2: Option<f64>,
    extents_mm: Option<[f64; 3]>,
    centre_mm: Option<[f64; 3]>,
    extents_in_file: [f64; 3],
    bodies: usize,
    voids: usize,
    mass_kg: Vec<MetalMass>,
    remarks: Vec<RemarkFile>,
}

#[derive(Serialize)]
struct UnitChoice {
    unit: &'static str,
    extents_mm: [f64; 3],
}

#[derive(Serialize)]
struct MetalMass {
    metal: &'static str,
    low: f64,
    likely: f64,
    high: f64,
}

impl LookFile {
    fn of(looked: &Looked, remarks: Vec<RemarkFile>) -> LookFile {
        let solid = &looked.solid;
        let known = looked.unit.is_some();
        let closed = known && solid.volume_mm3 > 0.0;
        LookFile {
            verdict: looked.verdict,
            unit: looked.unit.map(|unit| unit.sign()),
            unit_known_by: looked.basis,
            unit_choices: looked
                .choices
                .iter()
                .map(|c| UnitChoice {
                    unit: c.unit.sign(),
                    extents_mm: c.extents_mm,
                })
                .collect(),
            format: looked.format,
            triangles: looked.triangles,
            pieces: looked.pieces,
            volume_mm3: closed.then_some(solid.volume_mm3),
            area_mm2: known.then_some(solid.area_mm2),
            extents_mm: known.then_some(solid.extents_mm),
            centre_mm: closed.then_some(solid.centre_mm),
            extents_in_file: looked.extents_in_file,
            bodies: solid.bodies,
            voids: solid.voids,
            mass_kg: if closed {
                masses(solid.volume_mm3)
            } else {
                Vec::new()
            },
            remarks,
        }
    }
}

fn masses(volume_mm3: f64) -> Vec<MetalMass> {
    let volume = Volume::from_mm3(volume_mm3);
    let of = |alloy: &'static metal::alloy::Alloy| {
        let mass = alloy
            .density_solid
            .band
            .map(|density| casting_mass(volume, density).as_kg());
        MetalMass {
            metal: &alloy.name,
            low: mass.low(),
            likely: mass.likely(),
            high: mass.high(),
        }
    };
    alloys::all().iter().map(of).collect()
}

/// The language of the shop; a look does not fail for the shop's file.
fn language() -> Language {
    shop_above(Path::new(".")).map_or(Language::default(), |(shop, _)| shop.words)
}

fn tell(
    mesh: &Path,
    looked: &Looked,
    remarks: &[Remark],
    language: Language,
) -> Result<(), Trouble> {
    let solid = &looked.solid;
    let verdict = language.word(match looked.verdict {
        Verdict::Accepted => "look-accepted",
        Verdict::Healed => "look-healed",
        Verdict::Ask => "look-ask",
        Verdict::Refused => "look-refused",
    });
    let name = mesh.file_name().unwrap_or_default().to_string_lossy();
    let line = |label, words: &str| format!("  {:<8} {words}\n", language.word(label));
    let mut text = format!("{name}: {verdict}\n");
    if looked.unit.is_some() {
        text += &line("look-size", &size(solid.extents_mm));
        if solid.volume_mm3 > 0.0 {
            text += &line("look-volume", &language.say(&volume(looked)));
        }
    }
    let facets = Said::new("look-facets-told")
        .with("facets", looked.triangles)
        .with("bodies", solid.bodies)
        .with("voids", solid.voids);
    text += &line("look-facets", &language.say(&facets));
    print::out(&text)?;
    if looked.unit.is_some() && solid.volume_mm3 > 0.0 && looked.verdict != Verdict::Refused {
        print::out(&mass_table(solid.volume_mm3, language))?;
    }
    print::out(&print::remarks(remarks, language))?;
    print::out(&print::unread(language))
}

fn size(extents_mm: [f64; 3]) -> String {
    let [x, y, z] = extents_mm.map(|mm| rounded(mm, 4));
    let [a, b, c] = extents_mm.map(|mm| rounded(mm / 25.4, 3));
    format!("{x} x {y} x {z} mm ({a} x {b} x {c} in)")
}

fn volume(looked: &Looked) -> Said {
    let solid = &looked.solid;
    let [x, y, z] = solid.centre_mm.map(|mm| format!("{mm:.1}"));
    Said::new("look-volume-told")
        .with(
            "volume",
            format!("{} cm³", rounded(solid.volume_mm3 / 1e3, 4)),
        )
        .with(
            "surface",
            format!("{} cm²", rounded(solid.area_mm2 / 1e2, 4)),
        )
        .with("centre", format!("{x}, {y}, {z} mm"))
}

fn mass_table(volume_mm3: f64, language: Language) -> String {
    let heads = ["look-cast-in", "look-weighs", "head-between", "head-or"];
    let mut table = print::table_in(language, &heads);
    for row in masses(volume_mm3) {
        let band = measure::band::Band::new(row.low, row.likely, row.high)
            .map(measure::matter::Mass::from_kg);
        let shown = job::amount::Amount::Mass(band).shown(
            measure::text::System::Metric,
            measure::text::shown::Rounding::Nearest,
        );
        table.add_row([
            language.say(&alloy_label(row.metal)),
            shown.likely.clone(),
            language.between(&shown).unwrap_or_default(),
            shown.other.unwrap_or_default(),
        ]);
    }
    format!("{table}\n")
}
