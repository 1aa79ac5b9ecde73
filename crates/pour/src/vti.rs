//! The fields of a freezing as VTK ImageData, which general viewers open.

use std::fmt::Write;

use crate::cells::Stuff;
use crate::criteria::niyama_of_cells;
use crate::freeze::Solved;
use crate::pipe::Shrinkage;

/// The bytes of a `.vti` file: cell data over the box of equal cells, in millimetres of the mould.
/// What has no value is not a number. Times in seconds; `stuff` is 0 sand, 1 core, 2 metal, 3 air.
pub fn vti(solved: &Solved, shrinkage: &Shrinkage) -> Vec<u8> {
    let cells = &solved.meshed.cells;
    let stuff: Vec<u8> = cells
        .stuff
        .iter()
        .map(|stuff| match stuff {
            Stuff::Sand => 0,
            Stuff::Core => 1,
            Stuff::Metal => 2,
            Stuff::Air => 3,
        })
        .collect();
    let niyama = niyama_of_cells(solved);
    let fields: [(&str, &[f32]); 7] = [
        ("solid_s", &solved.ends_s),
        ("begins_s", &solved.begins_s),
        ("feeds_until_s", &solved.passes_s),
        ("niyama", &niyama),
        ("metal", &cells.metal),
        ("empty", &shrinkage.empty),
        ("pores", &shrinkage.porous),
    ];
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
