//! Solids with names and plain colours as one binary glTF 2.0 file, for any program that shows
//! three dimensions.
//!
//! Such a file counts in metres with y up, so that x, y, z in mm become x, z, −y in metres. Facets
//! carry no normals, which by the specification has them shown flat, as a moulder's block is.

use serde_json::{Value, json};

use crate::mesh::Mesh;

/// A solid as it is to be shown.
#[derive(Clone, Copy, Debug)]
pub struct Shown<'a> {
    /// Its name.
    pub name: &'a str,
    /// Its skin, mm.
    pub mesh: &'a Mesh,
    /// Red, green, blue and how opaque, each from 0 to 1.
    pub colour: [f64; 4],
    /// Whether it shines like metal.
    pub is_metal: bool,
}

/// The file: `glTF`, version 2, its length; then a chunk of JSON and a chunk of numbers
/// (glTF 2.0 specification, "Binary glTF Layout").
pub fn write_glb(solids: &[Shown<'_>]) -> Vec<u8> {
    let mut numbers = Vec::new();
    let mut parts = Parts::default();
    for (place, solid) in solids.iter().enumerate() {
        parts.add(place, solid, &mut numbers);
    }
    let mut text = parts.whole(numbers.len()).to_string().into_bytes();
    text.resize(text.len().next_multiple_of(4), b' ');
    numbers.resize(numbers.len().next_multiple_of(4), 0);
    let mut bytes = Vec::with_capacity(28 + text.len() + numbers.len());
    let word = |value: u32, bytes: &mut Vec<u8>| bytes.extend(value.to_le_bytes());
    bytes.extend_from_slice(b"glTF");
    word(2, &mut bytes);
    let chunks = [(*b"JSON", text), (*b"BIN\0", numbers)];
    let kept = chunks.iter().filter(|(_, chunk)| !chunk.is_empty());
    let length: usize = kept.clone().map(|(_, chunk)| 8 + chunk.len()).sum();
    word((12 + length) as u32, &mut bytes);
    for (kind, chunk) in kept {
        word(chunk.len() as u32, &mut bytes);
        bytes.extend_from_slice(kind);
        bytes.extend_from_slice(chunk);
    }
    bytes
}

/// What an accessor holds, by the numbers of the specification: corner points, or what counts
/// them.
const FLOAT: u32 = 5126;
const UNSIGNED: u32 = 5125;
const POINTS: u32 = 34962;
const FACETS: u32 = 34963;

#[derive(Default)]
struct Parts {
    nodes: Vec<Value>,
    meshes: Vec<Value>,
    materials: Vec<Value>,
    accessors: Vec<Value>,
    views: Vec<Value>,
}

impl Parts {
    /// A node for a solid; one without facets has a name only.
    fn add(&mut self, place: usize, solid: &Shown<'_>, numbers: &mut Vec<u8>) {
        self.materials.push(material(solid));
        if solid.mesh.triangles.is_empty() {
            self.nodes.push(json!({ "name": solid.name }));
            return;
        }
        let points: Vec<[f32; 3]> = solid
            .mesh
            .points
            .iter()
            .map(|point| placed(*point))
            .collect();
        let [low, high] = bounds(&points);
        let of_points = points
            .iter()
            .flatten()
            .flat_map(|along| along.to_le_bytes());
        self.view(numbers, of_points, POINTS);
        self.accessors.push(json!({
            "bufferView": self.views.len() - 1, "componentType": FLOAT, "type": "VEC3",
            "count": points.len(), "min": low, "max": high,
        }));
        let corners = solid.mesh.triangles.iter().flatten();
        self.view(
            numbers,
            corners.flat_map(|corner| corner.to_le_bytes()),
            FACETS,
        );
        self.accessors.push(json!({
            "bufferView": self.views.len() - 1, "componentType": UNSIGNED, "type": "SCALAR",
            "count": 3 * solid.mesh.triangles.len(),
        }));
        let facets = self.accessors.len() - 1;
        self.meshes
            .push(json!({ "name": solid.name, "primitives": [{
            "attributes": { "POSITION": facets - 1 }, "indices": facets, "material": place,
        }] }));
        self.nodes
            .push(json!({ "name": solid.name, "mesh": self.meshes.len() - 1 }));
    }

    fn view(&mut self, numbers: &mut Vec<u8>, bytes: impl Iterator<Item = u8>, target: u32) {
        let start = numbers.len();
        numbers.extend(bytes);
        self.views.push(json!({
            "buffer": 0, "byteOffset": start, "byteLength": numbers.len() - start,
            "target": target,
        }));
    }

    /// The JSON of all; lists that would be empty are left out, as the specification wants.
    fn whole(self, bytes: usize) -> Value {
        let nodes: Vec<usize> = (0..self.nodes.len()).collect();
        let scene = match nodes.is_empty() {
            true => json!({}),
            false => json!({ "nodes": nodes }),
        };
        let mut whole = json!({ "asset": { "version": "2.0" }, "scene": 0, "scenes": [scene] });
        let buffers = match bytes {
            0 => Vec::new(),
            bytes => vec![json!({ "byteLength": bytes })],
        };
        let lists = [
            ("nodes", self.nodes),
            ("meshes", self.meshes),
            ("materials", self.materials),
            ("accessors", self.accessors),
            ("bufferViews", self.views),
            ("buffers", buffers),
        ];
        for (name, list) in lists.into_iter().filter(|(_, list)| !list.is_empty()) {
            whole[name] = Value::Array(list);
        }
        whole
    }
}

fn material(solid: &Shown<'_>) -> Value {
    let (metal, rough) = if solid.is_metal {
        (0.6, 0.4)
    } else {
        (0.0, 1.0)
    };
    let mut material = json!({ "name": solid.name, "pbrMetallicRoughness": {
        "baseColorFactor": solid.colour, "metallicFactor": metal, "roughnessFactor": rough,
    } });
    if solid.colour[3] < 1.0 {
        material["alphaMode"] = json!("BLEND");
    }
    material
}

/// In metres, y up.
fn placed([x, y, z]: [f64; 3]) -> [f32; 3] {
    [x, z, -y].map(|along| (along / 1000.0) as f32)
}

fn bounds(points: &[[f32; 3]]) -> [[f32; 3]; 2] {
    let start = [[f32::INFINITY; 3], [f32::NEG_INFINITY; 3]];
    points.iter().fold(start, |[low, high], point| {
        let at = |axis: usize| point[axis];
        [
            [0, 1, 2].map(|axis| low[axis].min(at(axis))),
            [0, 1, 2].map(|axis| high[axis].max(at(axis))),
        ]
    })
}
