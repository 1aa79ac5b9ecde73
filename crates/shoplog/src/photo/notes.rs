//! The notes of a picture taken out of its file, with the place it was taken at: nothing else of it
//! is touched.

/// A JPEG without its blocks of notes (APP1 to APP15 but for APP2 and APP14, which colours need,
/// and comments), and with one block that says which way is up.
pub(super) fn without_notes_of_jpeg(bytes: &[u8], up: u8) -> Option<Vec<u8>> {
    let mut kept = bytes.get(..2)?.to_vec();
    if up != 1 {
        kept.extend(way_up(up));
    }
    let mut at = 2;
    loop {
        let marker = *bytes.get(at + 1)?;
        if bytes.get(at) != Some(&0xFF) {
            return None;
        }
        if marker == 0xDA {
            kept.extend(bytes.get(at..)?);
            return Some(kept);
        }
        let length = usize::from(u16::from_be_bytes([
            *bytes.get(at + 2)?,
            *bytes.get(at + 3)?,
        ]));
        let block = bytes.get(at..at + 2 + length)?;
        let is_note = matches!(marker, 0xE1 | 0xE3..=0xED | 0xEF | 0xFE);
        if !is_note {
            kept.extend(block);
        }
        at += 2 + length;
    }
}

/// An EXIF block with the way up and nothing else.
fn way_up(up: u8) -> Vec<u8> {
    let mut block = vec![0xFF, 0xE1, 0, 34];
    block.extend(b"Exif\0\0MM\0\x2A\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0");
    block.extend([up, 0, 0, 0, 0, 0, 0]);
    block
}

/// A PNG without its blocks of notes.
pub(super) fn without_notes_of_png(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut kept = bytes.get(..8)?.to_vec();
    let mut at = 8;
    while at < bytes.len() {
        let length = bytes.get(at..at + 4)?;
        let length = u32::from_be_bytes(length.try_into().ok()?) as usize;
        let block = bytes.get(at..at.checked_add(length)?.checked_add(12)?)?;
        let name = &block[4..8];
        if ![b"eXIf", b"tEXt", b"zTXt", b"iTXt"]
            .iter()
            .any(|note| *note == name)
        {
            kept.extend(block);
        }
        at += block.len();
    }
    Some(kept)
}

/// A WebP without its blocks of notes: they are left out, and the header no longer says they are
/// there.
pub(super) fn without_notes_of_webp(bytes: &[u8]) -> Option<Vec<u8>> {
    /// What the header says of EXIF and of XMP.
    const NOTED: u8 = 0b0000_1100;
    let mut kept = bytes.get(..12)?.to_vec();
    let mut at = 12;
    while at < bytes.len() {
        let length = bytes.get(at + 4..at + 8)?;
        let length = u32::from_le_bytes(length.try_into().ok()?) as usize;
        // A block of odd length has a byte behind it.
        let end = at
            .checked_add(8)?
            .checked_add(length)?
            .checked_add(length % 2)?;
        let block = bytes.get(at..end)?;
        match &block[..4] {
            b"EXIF" | b"XMP " => {}
            b"VP8X" => {
                kept.extend(block);
                let flags = kept.len() - block.len() + 8;
                *kept.get_mut(flags)? &= !NOTED;
            }
            _ => kept.extend(block),
        }
        at = end;
    }
    let size = u32::try_from(kept.len() - 8).ok()?;
    kept[4..8].copy_from_slice(&size.to_le_bytes());
    Some(kept)
}

/// A HEIC whose notes are blotted out where they lie, since all else in the file counts on its
/// place. The way up stands apart from them and stays.
pub(super) fn without_notes_of_heic(bytes: &[u8], exif: Option<&[u8]>) -> Option<Vec<u8>> {
    let mut kept = bytes.to_vec();
    if let Some(exif) = exif.filter(|exif| !exif.is_empty()) {
        // Where the notes are in several pieces they are not found, and the picture is refused.
        let at = find(&kept, exif)?;
        // An EXIF block with nothing in it.
        const EMPTY: &[u8] = b"MM\0\x2A\0\0\0\x08\0\0\0\0\0\0";
        let blot = kept.get_mut(at..at + exif.len())?;
        blot.fill(0);
        let head = EMPTY.len().min(blot.len());
        blot[..head].copy_from_slice(&EMPTY[..head]);
    }
    const OPENS: &[u8] = b"<x:xmpmeta";
    const CLOSES: &[u8] = b"</x:xmpmeta>";
    while let Some(at) = find(&kept, OPENS) {
        let end = at + find(&kept[at..], CLOSES)? + CLOSES.len();
        kept[at..end].fill(b' ');
    }
    Some(kept)
}

/// Width and height of a WebP with a header that tells them.
pub(super) fn sides_of_webp(bytes: &[u8]) -> Option<[u32; 2]> {
    let side = |at: usize| {
        let three = bytes.get(at..at + 3)?;
        Some(1 + u32::from_le_bytes([three[0], three[1], three[2], 0]))
    };
    (bytes.get(12..16)? == b"VP8X").then_some(())?;
    Some([side(24)?, side(27)?])
}

fn find(bytes: &[u8], wanted: &[u8]) -> Option<usize> {
    bytes.windows(wanted.len()).position(|here| here == wanted)
}
