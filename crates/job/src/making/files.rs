//! A pattern made, as files for a printer or a mill: one 3MF with all solids, an STL of each.

use pattern::mesh::Mesh;
use pattern::stl::write_stl;
use pattern::threemf_write::{Metadata, Piece as Written, WriteError, write_threemf};
use pattern::touching::apart;

use crate::making::{Making, Piece, What};

/// Name of the file that holds all solids.
pub const ALL_FILE: &str = "pattern.3mf";

/// Names and bytes of the files.
///
/// # Errors
///
/// A solid that could not be read again.
pub fn files(making: &Making) -> Result<Vec<(String, Vec<u8>)>, WriteError> {
    let names: Vec<String> = making.pieces.iter().map(name_of).collect();
    let meshes: Vec<Mesh> = making
        .pieces
        .iter()
        .map(|piece| apart(&piece.mesh))
        .collect();
    let pieces: Vec<Written<'_>> = meshes
        .iter()
        .zip(&names)
        .map(|(mesh, name)| Written { name, mesh })
        .collect();
    let description = "Pattern for a sand casting, made larger by the contraction of its metal";
    let metadata = [
        (Metadata::Title, making.name.as_str()),
        (Metadata::Description, description),
        (Metadata::Application, "Oddside"),
    ];
    let mut files = vec![(ALL_FILE.to_owned(), write_threemf(&pieces, &metadata)?)];
    for (mesh, name) in meshes.iter().zip(&names) {
        files.push((format!("{name}.stl"), write_stl(mesh)));
    }
    Ok(files)
}

fn name_of(piece: &Piece) -> String {
    let what = match piece.what {
        What::Pattern => "pattern".to_owned(),
        What::Drag => "pattern_drag".to_owned(),
        What::Cope => "pattern_cope".to_owned(),
        What::Loose(number) => format!("loose_piece_{number}"),
        What::Oddside => "oddside".to_owned(),
        What::Board => "pattern_board".to_owned(),
    };
    match piece.number {
        None => what,
        Some(number) => format!("{what}_{number}"),
    }
}
