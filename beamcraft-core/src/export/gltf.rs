//! The panels as glTF.

use super::remains;
use super::text::push;
use super::words;
use crate::geometry::Vec3;
use crate::shell::Panel;

/// Panels as a binary glTF 2.0 file: one node a panel with its name, in metres, y up, the front towards the viewer.
///
/// Materials are neutral: one for show faces, one for inner faces and edges, neither shiny; the colour of a wood is the
/// viewer's choice. Every face has its own normals. A panel that pieces have been taken out of is drawn as the convex
/// parts that are left of it, each closed. Numbers are single precision: a coordinate of some metres is off by up to a
/// tenth of a thousandth of a millimetre.
pub fn panels_gltf(name: &str, panels: &[Panel]) -> Vec<u8> {
    let mut file = File::default();
    for panel in panels {
        file.panel(panel);
    }
    file.finish(if name.is_empty() { "Hollow beam" } else { name })
}

/// Triangles of one material.
#[derive(Default)]
struct Mesh {
    positions: Vec<[f32; 3]>,
    normals: Vec<[f32; 3]>,
    indices: Vec<u32>,
}

impl Mesh {
    /// A convex face; too few corners for a surface are left out.
    fn face(&mut self, normal: Vec3, points: impl Iterator<Item = Vec3>) {
        let first = self.positions.len() as u32;
        let mut count = 0;
        for point in points {
            self.positions.push(turned(point * 0.001));
            self.normals.push(turned(normal));
            count += 1;
        }
        for corner in 2..count {
            self.indices.extend([first, first + corner - 1, first + corner]);
        }
    }
}

/// Along, to the wall, up becomes right, up, towards the viewer.
fn turned(v: Vec3) -> [f32; 3] {
    // A negative zero would be the one difference between equal files.
    [v.x as f32 + 0.0, v.z as f32 + 0.0, -v.y as f32 + 0.0]
}

#[derive(Default)]
struct File {
    bytes: Vec<u8>,
    views: Vec<String>,
    accessors: Vec<String>,
    meshes: Vec<String>,
    nodes: Vec<String>,
}

impl File {
    fn panel(&mut self, panel: &Panel) {
        let (mut show, mut rest) = (Mesh::default(), Mesh::default());
        for part in remains::parts(panel) {
            for face in part.faces() {
                let mesh = if face.tag == Panel::SHOW { &mut show } else { &mut rest };
                mesh.face(face.plane.normal(), face.points());
            }
        }
        let primitives: Vec<String> = [(show, 0), (rest, 1)]
            .into_iter()
            .filter(|(mesh, _)| !mesh.indices.is_empty())
            .map(|(mesh, material)| self.primitive(&mesh, material))
            .collect();
        if primitives.is_empty() {
            return;
        }
        let name = quoted(&words::face(panel.id));
        self.nodes.push(format!("{{\"name\":{name},\"mesh\":{}}}", self.meshes.len()));
        self.meshes.push(format!("{{\"name\":{name},\"primitives\":[{}]}}", primitives.join(",")));
    }

    fn primitive(&mut self, mesh: &Mesh, material: u32) -> String {
        let position = self.triples(&mesh.positions, Bounds::Stated);
        let normal = self.triples(&mesh.normals, Bounds::LeftOut);
        let start = self.bytes.len();
        self.bytes.extend(mesh.indices.iter().flat_map(|index| index.to_le_bytes()));
        let view = self.view(start, 34963);
        self.accessors.push(format!(
            "{{\"bufferView\":{view},\"componentType\":5125,\"count\":{},\"type\":\"SCALAR\"}}",
            mesh.indices.len()
        ));
        format!(
            "{{\"attributes\":{{\"POSITION\":{position},\"NORMAL\":{normal}}},\"indices\":{},\"material\":{material}}}",
            self.accessors.len() - 1
        )
    }

    /// Writes points or directions; gives the number of their accessor.
    fn triples(&mut self, triples: &[[f32; 3]], bounds: Bounds) -> usize {
        let start = self.bytes.len();
        self.bytes.extend(triples.iter().flatten().flat_map(|number| number.to_le_bytes()));
        let view = self.view(start, 34962);
        let mut accessor =
            format!("{{\"bufferView\":{view},\"componentType\":5126,\"count\":{},\"type\":\"VEC3\"", triples.len());
        if bounds == Bounds::Stated {
            let fold = |start: f32, pick: fn(f32, f32) -> f32| {
                let ends =
                    triples.iter().fold([start; 3], |[a, b, c], [x, y, z]| [pick(a, *x), pick(b, *y), pick(c, *z)]);
                ends.map(|number| number.to_string()).join(",")
            };
            let (low, high) = (fold(f32::MAX, f32::min), fold(f32::MIN, f32::max));
            push(&mut accessor, format_args!(",\"min\":[{low}],\"max\":[{high}]"));
        }
        accessor.push('}');
        self.accessors.push(accessor);
        self.accessors.len() - 1
    }

    fn view(&mut self, start: usize, target: u32) -> usize {
        let length = self.bytes.len() - start;
        self.views.push(format!("{{\"buffer\":0,\"byteOffset\":{start},\"byteLength\":{length},\"target\":{target}}}"));
        self.views.len() - 1
    }

    fn finish(self, name: &str) -> Vec<u8> {
        let material = |name: &str, [red, green, blue]: [f32; 3]| {
            format!(
                "{{\"name\":\"{name}\",\"pbrMetallicRoughness\":{{\"baseColorFactor\":[{red},{green},{blue},1],\
                 \"metallicFactor\":0,\"roughnessFactor\":0.8}}}}"
            )
        };
        let mut json = String::from("{\"asset\":{\"version\":\"2.0\",\"generator\":\"beamcraft\"},\"scene\":0,");
        let children: Vec<String> = (1..=self.nodes.len()).map(|node| node.to_string()).collect();
        let children =
            if children.is_empty() { String::new() } else { format!(",\"children\":[{}]", children.join(",")) };
        let root = format!("{{\"name\":{}{children}}}", quoted(name));
        let nodes = [&[root], self.nodes.as_slice()].concat().join(",");
        push(&mut json, format_args!("\"scenes\":[{{\"nodes\":[0]}}],\"nodes\":[{nodes}]"));
        // Empty lists are not allowed.
        if !self.meshes.is_empty() {
            push(
                &mut json,
                format_args!(
                    ",\"materials\":[{},{}],\"meshes\":[{}],\"accessors\":[{}],\"bufferViews\":[{}],\
                     \"buffers\":[{{\"byteLength\":{}}}]",
                    material("show faces", [0.62, 0.56, 0.5]),
                    material("inner faces and edges", [0.76, 0.72, 0.67]),
                    self.meshes.join(","),
                    self.accessors.join(","),
                    self.views.join(","),
                    self.bytes.len()
                ),
            );
        }
        json.push('}');
        while !json.len().is_multiple_of(4) {
            json.push(' ');
        }
        let mut chunks = Vec::new();
        for (kind, bytes) in [(b"JSON", json.as_bytes()), (b"BIN\0", &self.bytes)] {
            if !bytes.is_empty() {
                chunks.extend((bytes.len() as u32).to_le_bytes());
                chunks.extend(kind);
                chunks.extend(bytes);
            }
        }
        let mut out = b"glTF".to_vec();
        out.extend(2_u32.to_le_bytes());
        out.extend((12 + chunks.len() as u32).to_le_bytes());
        out.extend(chunks);
        out
    }
}

/// Whether an accessor says its least and greatest values.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Bounds {
    Stated,
    LeftOut,
}

/// A text of JSON.
fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            letter if u32::from(letter) < 0x20 => push(&mut out, format_args!("\\u{:04x}", u32::from(letter))),
            letter => out.push(letter),
        }
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::export::samples;

    /// The JSON and the binary chunk.
    fn read(glb: &[u8]) -> (String, &[u8]) {
        let number = |at: usize| u32::from_le_bytes(glb[at..at + 4].try_into().unwrap()) as usize;
        assert_eq!((&glb[..4], number(4), number(8)), (b"glTF".as_slice(), 2, glb.len()));
        let length = number(12);
        assert_eq!(&glb[16..20], b"JSON");
        let json = String::from_utf8(glb[20..20 + length].to_vec()).unwrap();
        if glb.len() == 20 + length {
            return (json, &[]);
        }
        assert_eq!(&glb[24 + length..28 + length], b"BIN\0");
        assert_eq!(number(20 + length), glb.len() - 28 - length);
        (json, &glb[28 + length..])
    }

    #[test]
    fn every_panel_is_a_node_with_its_name() {
        for (name, plan) in samples::all() {
            let glb = panels_gltf(&plan.spec.name, &plan.panels);
            let (json, bytes) = read(&glb);
            for panel in &plan.panels {
                let node = format!("{{\"name\":\"{}\",\"mesh\":", words::face(panel.id));
                assert_eq!(json.matches(&node).count(), 1, "{name}: {json}");
            }
            // A show face and the rest: positions and normals of each corner of each face, three numbers of four bytes, and
            // the indices.
            let corners = |panel: &Panel| panel.blank().unwrap().faces().map(|face| face.corners.len()).sum::<usize>();
            let faces = |panel: &Panel| panel.blank().unwrap().faces().len();
            let expected: usize = plan.panels.iter().map(|p| 24 * corners(p) + 12 * (corners(p) - 2 * faces(p))).sum();
            assert_eq!(bytes.len(), expected);
        }
    }

    #[cfg(feature = "json")]
    #[test]
    fn names_stay_text() {
        let plan = samples::hostile();
        let (json, _) = read(&panels_gltf(&plan.spec.name, &plan.panels)).clone();
        let value: serde_json::Value = serde_json::from_str(&json).unwrap();
        assert_eq!(value["nodes"][0]["name"], plan.spec.name.as_str());
        let bare: serde_json::Value = serde_json::from_str(&read(&panels_gltf("\u{1}\"\\", &[])).0).unwrap();
        assert_eq!(bare["nodes"][0]["name"], "\u{1}\"\\");
    }

    #[test]
    fn the_front_looks_at_the_viewer() {
        assert_eq!(turned(-Vec3::Y), [0.0, 0.0, 1.0]);
        assert_eq!(turned(Vec3::Z), [0.0, 1.0, 0.0]);
        assert_eq!(turned(Vec3::X), [1.0, 0.0, 0.0]);
    }
}
