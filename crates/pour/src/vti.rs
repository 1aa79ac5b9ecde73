//! The fields of a freezing as VTK ImageData, which general viewers open.

use std::fmt::Write;

use crate::cells::Stuff;
use crate::criteria::niyama_of_cells;
use crate::fill::Glance;
use crate::pipe::Shrinkage;
use crate::solved::Solved;

/// The bytes of a `.vti` file: cell data over the box of equal cells, in millimetres of the mould.
/// What has no value is not a number. Times in seconds; `stuff` is 0 sand, 1 core, 2 metal, 3 air,
/// 4 chill. When and how hot metal arrives is in it where its filling was seen.
pub fn vti(solved: &Solved, shrinkage: &Shrinkage, filled: Option<&Glance>) -> Vec<u8> {
    let cells = &solved.meshed.cells;
    let stuff: Vec<u8> = cells
        .stuff
        .iter()
        .map(|stuff| match stuff {
            Stuff::Sand => 0,
            Stuff::Core => 1,
            Stuff::Metal => 2,
            Stuff::Air => 3,
            Stuff::Chill(_) => 4,
        })
        .collect();
    let niyama = niyama_of_cells(solved);
    let arrived = filled.map(|glance| arrived(solved, glance));
    let mut fields: Vec<(&str, &[f32])> = vec![
        ("solid_s", &solved.ends_s),
        ("begins_s", &solved.begins_s),
        ("feeds_until_s", &solved.passes_s),
        ("niyama", &niyama),
        ("metal", &cells.metal),
        ("empty", &shrinkage.empty),
        ("pores", &shrinkage.porous),
    ];
    if let Some([seconds, celsius]) = &arrived {
        fields.extend([("arrives_s", &seconds[..]), ("arrives_c", &celsius[..])]);
    }
    let [nx, ny, nz] = cells.count;
    let [x, y, z] = cells.origin_mm;
    let size = cells.size_mm;
    let mut head = format!(
        "<?xml version=\"1.0\"?>\n\
         <VTKFile type=\"ImageData\" version=\"1.0\" byte_order=\"LittleEndian\" \
         header_type=\"UInt64\">\n\
         <ImageData WholeExtent=\"0 {nx} 0 {ny} 0 {nz}\" Origin=\"{x} {y} {z}\" \
         Spacing=\"{size} {size} {size}\">\n\
         <Piece Extent=\"0 {nx} 0 {ny} 0 {nz}\">\n<CellData Scalars=\"solid_s\">\n"
    );
    let mut body: Vec<u8> = Vec::new();
    for (name, values) in fields {
        let _ = writeln!(
            head,
            "<DataArray type=\"Float32\" Name=\"{name}\" format=\"appended\" offset=\"{}\"/>",
            body.len()
        );
        body.extend((4 * values.len() as u64).to_le_bytes());
        body.extend(values.iter().flat_map(|value| value.to_le_bytes()));
    }
    let _ = writeln!(
        head,
        "<DataArray type=\"UInt8\" Name=\"stuff\" format=\"appended\" offset=\"{}\"/>",
        body.len()
    );
    body.extend((stuff.len() as u64).to_le_bytes());
    body.extend(&stuff);
    head.push_str("</CellData>\n</Piece>\n</ImageData>\n<AppendedData encoding=\"raw\">\n_");
    let mut bytes = head.into_bytes();
    bytes.extend(body);
    bytes.extend(b"\n</AppendedData>\n</VTKFile>\n");
    bytes
}

/// When and how hot metal comes to each cell, not a number where none comes.
fn arrived(solved: &Solved, glance: &Glance) -> [Vec<f32>; 2] {
    let stuff = &solved.meshed.cells.stuff;
    let came = |cell: usize| stuff[cell] == Stuff::Metal && glance.arrival_s[cell].is_finite();
    [&glance.arrival_s, &glance.arrival_c].map(|of| {
        let value = |cell: usize| if came(cell) { of[cell] } else { f32::NAN };
        (0..stuff.len()).map(value).collect()
    })
}
