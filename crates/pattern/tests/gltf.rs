//! The binary glTF file read back by the rules of its specification.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use pattern::gltf::{Shown, write_glb};
use pattern::mesh::Mesh;
use serde_json::Value;

fn tetrahedron() -> Mesh {
    Mesh {
        points: vec![
            [0.0; 3],
            [100.0, 0.0, 0.0],
            [0.0, 200.0, 0.0],
            [0.0, 0.0, 300.0],
        ],
        triangles: vec![[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]],
    }
}

fn word(bytes: &[u8], at: usize) -> usize {
    u32::from_le_bytes(bytes[at..at + 4].try_into().unwrap()) as usize
}

/// The JSON of a file and its numbers, each part of it checked for what the layout wants.
fn read(bytes: &[u8]) -> (Value, Vec<u8>) {
    assert_eq!(&bytes[..4], b"glTF");
    assert_eq!((word(bytes, 4), word(bytes, 8)), (2, bytes.len()));
    let text = word(bytes, 12);
    assert_eq!(&bytes[16..20], b"JSON");
    assert_eq!(text % 4, 0);
    let json = serde_json::from_slice(&bytes[20..20 + text]).unwrap();
    let rest = &bytes[20 + text..];
    if rest.is_empty() {
        return (json, Vec::new());
    }
    assert_eq!(
        (word(rest, 0), &rest[4..8]),
        (rest.len() - 8, &b"BIN\0"[..])
    );
    (json, rest[8..].to_vec())
}

#[test]
fn solids_are_read_back_in_metres_with_y_up() {
    let mesh = tetrahedron();
    let glass = Shown {
        name: "cope",
        mesh: &mesh,
        colour: [0.8, 0.7, 0.5, 0.3],
        is_metal: false,
    };
    let metal = Shown {
        name: "sprue",
        colour: [0.7, 0.7, 0.7, 1.0],
        is_metal: true,
        ..glass
    };
    let (json, numbers) = read(&write_glb(&[glass, metal]));
    assert_eq!(json["asset"]["version"], "2.0");
    assert_eq!(json["buffers"][0]["byteLength"], numbers.len());
    let names: Vec<_> = json["nodes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|n| &n["name"])
        .collect();
    assert_eq!(names, ["cope", "sprue"]);
    assert_eq!(json["materials"][0]["alphaMode"], "BLEND");
    assert!(json["materials"][1].get("alphaMode").is_none());
    for node in 0..2 {
        let primitive = &json["meshes"][node]["primitives"][0];
        assert_eq!(primitive["material"], node);
        let of = |key: &Value| {
            let accessor = &json["accessors"][key.as_u64().unwrap() as usize];
            let view = &json["bufferViews"][accessor["bufferView"].as_u64().unwrap() as usize];
            let start = view["byteOffset"].as_u64().unwrap() as usize;
            (
                accessor.clone(),
                numbers[start..][..view["byteLength"].as_u64().unwrap() as usize].to_vec(),
            )
        };
        let (accessor, bytes) = of(&primitive["attributes"]["POSITION"]);
        let along = bytes
            .chunks_exact(4)
            .map(|b| f32::from_le_bytes(b.try_into().unwrap()));
        let points: Vec<f32> = along.collect();
        let wanted = [0.0, 0.0, 0.0, 0.1, 0.0, 0.0, 0.0, 0.0, -0.2, 0.0, 0.3, 0.0];
        assert_eq!(points, wanted);
        assert_eq!(accessor["count"], 4);
        assert_eq!(
            accessor["min"],
            serde_json::json!([0.0_f32, 0.0_f32, -0.2_f32])
        );
        assert_eq!(
            accessor["max"],
            serde_json::json!([0.1_f32, 0.3_f32, 0.0_f32])
        );
        let (accessor, bytes) = of(&primitive["indices"]);
        let corners: Vec<usize> = (0..12).map(|i| word(&bytes, 4 * i)).collect();
        assert_eq!(corners, [0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]);
        assert_eq!(accessor["count"], 12);
    }
}

#[test]
fn nothing_and_a_solid_without_facets_are_files_too() {
    let (json, numbers) = read(&write_glb(&[]));
    assert!(numbers.is_empty() && json.get("nodes").is_none());
    let none = Mesh::default();
    let empty = Shown {
        name: "vent",
        mesh: &none,
        colour: [1.0; 4],
        is_metal: false,
    };
    let (json, _) = read(&write_glb(&[empty]));
    assert!(json["nodes"][0].get("mesh").is_none());
    assert!(json.get("accessors").is_none() && json.get("buffers").is_none());
}
