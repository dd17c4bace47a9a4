//! The panels as STEP.

use super::remains::{self, Wood, edges_of};
use super::text::push;
use super::words;
use crate::geometry::Vec3;
use crate::shell::Panel;

/// The date in the head of the file; a clock would make equal files differ.
const DATE: &str = "2000-01-01T00:00:00";

/// Panels as a STEP file (ISO 10303-21, AP214): an assembly with one part a panel, each a solid with plane faces, in
/// millimetres and in the axes of the body.
///
/// Every edge is shared by its two faces. A panel that pieces have been taken out of is the wood that is left: one solid,
/// or several of the same name with a number where the wood falls apart or encloses a hollow. The date in the head is
/// always the same, so that the same panels give the same bytes.
pub fn panels_step(name: &str, panels: &[Panel]) -> String {
    let mut file = File::default();
    let context = file.context();
    let origin = file.placement(Vec3::ZERO, Vec3::Z, Vec3::X);
    let name = if name.is_empty() { "Hollow beam" } else { name };
    let mut items = vec![origin];
    let mut children = Vec::new();
    for panel in panels {
        let label = words::face(panel.id);
        let bodies = remains::bodies(panel);
        let count = bodies.len();
        let solids: Vec<usize> = bodies
            .iter()
            .enumerate()
            .map(|(k, body)| {
                let label = if count > 1 { format!("{label}, part {}", k + 1) } else { label.clone() };
                file.solid(&label, body)
            })
            .collect();
        if solids.is_empty() {
            continue;
        }
        let placed = file.placement(Vec3::ZERO, Vec3::Z, Vec3::X);
        let own = file.placement(Vec3::ZERO, Vec3::Z, Vec3::X);
        items.push(placed);
        let list = list(&[&[own], solids.as_slice()].concat());
        let shape = file.entity(format_args!("ADVANCED_BREP_SHAPE_REPRESENTATION({},{list},#{context})", text(&label)));
        children.push((label, shape, own, placed));
    }
    let list = list(&items);
    let whole = file.entity(format_args!("SHAPE_REPRESENTATION({},{list},#{context})", text(name)));
    let application = file.application();
    let root = file.product(name, whole, application);
    for (k, (label, shape, own, placed)) in children.iter().enumerate() {
        let part = file.product(label, *shape, application);
        let usage = file.entity(format_args!(
            "NEXT_ASSEMBLY_USAGE_OCCURRENCE('{}',{},'',#{root},#{part},$)",
            k + 1,
            text(label)
        ));
        let used = file.entity(format_args!("PRODUCT_DEFINITION_SHAPE('','',#{usage})"));
        let moved = file.entity(format_args!("ITEM_DEFINED_TRANSFORMATION('','',#{own},#{placed})"));
        let relation = file.entity(format_args!(
            "(REPRESENTATION_RELATIONSHIP('','',#{shape},#{whole})\
             REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(#{moved})SHAPE_REPRESENTATION_RELATIONSHIP())"
        ));
        file.entity(format_args!("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(#{relation},#{used})"));
    }
    file.finish(name)
}

/// A text in the alphabet of ISO 10303-21: quotes and backslashes doubled, all beyond ASCII by its number.
fn text(words: &str) -> String {
    let mut out = String::from("'");
    for letter in words.chars() {
        match letter {
            '\'' => out.push_str("''"),
            '\\' => out.push_str("\\\\"),
            ' '..='~' => out.push(letter),
            letter if u32::from(letter) <= 0xffff => {
                push(&mut out, format_args!("\\X2\\{:04X}\\X0\\", u32::from(letter)));
            }
            letter => push(&mut out, format_args!("\\X4\\{:08X}\\X0\\", u32::from(letter))),
        }
    }
    out.push('\'');
    out
}

/// A number; it always has a point.
fn real(value: f64) -> String {
    let mut text = format!("{}", value + 0.0);
    if !text.contains('.') {
        text.push('.');
    }
    text
}

fn triple(point: Vec3) -> String {
    format!("({},{},{})", real(point.x), real(point.y), real(point.z))
}

/// References in brackets.
fn list(numbers: &[usize]) -> String {
    let numbers: Vec<String> = numbers.iter().map(|number| format!("#{number}")).collect();
    format!("({})", numbers.join(","))
}

/// The entities of a file, numbered from 1.
#[derive(Default)]
struct File {
    data: String,
    count: usize,
}

impl File {
    fn entity(&mut self, entity: core::fmt::Arguments<'_>) -> usize {
        self.count += 1;
        push(&mut self.data, format_args!("#{}={entity};\n", self.count));
        self.count
    }

    fn point(&mut self, point: Vec3) -> usize {
        self.entity(format_args!("CARTESIAN_POINT('',{})", triple(point)))
    }

    fn direction(&mut self, direction: Vec3) -> usize {
        self.entity(format_args!("DIRECTION('',{})", triple(direction)))
    }

    fn placement(&mut self, at: Vec3, axis: Vec3, along: Vec3) -> usize {
        let (at, axis, along) = (self.point(at), self.direction(axis), self.direction(along));
        self.entity(format_args!("AXIS2_PLACEMENT_3D('',#{at},#{axis},#{along})"))
    }

    /// Millimetres, radians, and how close points must be.
    fn context(&mut self) -> usize {
        let length = self.entity(format_args!("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))"));
        let angle = self.entity(format_args!("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))"));
        let solid = self.entity(format_args!("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())"));
        let close = self.entity(format_args!(
            "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-06),#{length},'distance_accuracy_value','')"
        ));
        self.entity(format_args!(
            "(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#{close}))\
             GLOBAL_UNIT_ASSIGNED_CONTEXT((#{length},#{angle},#{solid}))REPRESENTATION_CONTEXT('',''))"
        ))
    }

    fn application(&mut self) -> usize {
        let application =
            self.entity(format_args!("APPLICATION_CONTEXT('core data for automotive mechanical design processes')"));
        self.entity(format_args!(
            "APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,#{application})"
        ));
        application
    }

    /// A product with its shape; gives its definition.
    fn product(&mut self, name: &str, shape: usize, application: usize) -> usize {
        let name = text(name);
        let mechanical = self.entity(format_args!("PRODUCT_CONTEXT('',#{application},'mechanical')"));
        let product = self.entity(format_args!("PRODUCT({name},{name},'',(#{mechanical}))"));
        self.entity(format_args!("PRODUCT_RELATED_PRODUCT_CATEGORY('part','',(#{product}))"));
        let formation = self.entity(format_args!("PRODUCT_DEFINITION_FORMATION('','',#{product})"));
        let design = self.entity(format_args!("PRODUCT_DEFINITION_CONTEXT('part definition',#{application},'design')"));
        let definition = self.entity(format_args!("PRODUCT_DEFINITION('design','',#{formation},#{design})"));
        let own = self.entity(format_args!("PRODUCT_DEFINITION_SHAPE('','',#{definition})"));
        self.entity(format_args!("SHAPE_DEFINITION_REPRESENTATION(#{own},#{shape})"));
        definition
    }

    /// A closed solid with plane faces.
    fn solid(&mut self, name: &str, wood: &Wood) -> usize {
        let mut corners = Vec::with_capacity(wood.vertices.len());
        for point in &wood.vertices {
            let at = self.point(*point);
            corners.push((*point, self.entity(format_args!("VERTEX_POINT('',#{at})"))));
        }
        let mut edges: Vec<((u32, u32), usize)> = Vec::new();
        let mut faces = Vec::with_capacity(wood.faces.len());
        for face in &wood.faces {
            let mut bounds = Vec::with_capacity(face.rings.len());
            for (k, ring) in face.rings.iter().enumerate() {
                let mut run = Vec::with_capacity(ring.len());
                for (from, to) in edges_of(ring) {
                    let known = edges.iter().find(|(ends, _)| *ends == (to, from)).map(|(_, edge)| *edge);
                    let (edge, way) = match known {
                        Some(edge) => (edge, ".F."),
                        None => {
                            let edge = self.edge(&corners, from, to);
                            edges.push(((from, to), edge));
                            (edge, ".T.")
                        }
                    };
                    run.push(self.entity(format_args!("ORIENTED_EDGE('',*,*,#{edge},{way})")));
                }
                let list = list(&run);
                let ring = self.entity(format_args!("EDGE_LOOP('',{list})"));
                let kind = if k == 0 { "FACE_OUTER_BOUND" } else { "FACE_BOUND" };
                bounds.push(self.entity(format_args!("{kind}('',#{ring},.T.)")));
            }
            let mut points = face.rings.first().into_iter().flat_map(|ring| wood.points(ring));
            let (at, next) = (points.next().unwrap_or_default(), points.next().unwrap_or_default());
            let along = (next - at).normalised().unwrap_or(Vec3::X);
            let placement = self.placement(at, face.normal, along);
            let plane = self.entity(format_args!("PLANE('',#{placement})"));
            let list = list(&bounds);
            faces.push(self.entity(format_args!("ADVANCED_FACE('',{list},#{plane},.T.)")));
        }
        let list = list(&faces);
        let shell = self.entity(format_args!("CLOSED_SHELL('',{list})"));
        self.entity(format_args!("MANIFOLD_SOLID_BREP({},#{shell})", text(name)))
    }

    fn edge(&mut self, corners: &[(Vec3, usize)], from: u32, to: u32) -> usize {
        let corner = |index: u32| corners.get(index as usize).copied().unwrap_or_default();
        let ((start, first), (end, last)) = (corner(from), corner(to));
        let at = self.point(start);
        let direction = self.direction((end - start).normalised().unwrap_or(Vec3::X));
        let vector = self.entity(format_args!("VECTOR('',#{direction},1.)"));
        let line = self.entity(format_args!("LINE('',#{at},#{vector})"));
        self.entity(format_args!("EDGE_CURVE('',#{first},#{last},#{line},.T.)"))
    }

    fn finish(self, name: &str) -> String {
        format!(
            "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('panels of a hollow beam, millimetres'),'2;1');\n\
             FILE_NAME({},'{DATE}',(''),(''),'','beamcraft','');\n\
             FILE_SCHEMA(('AUTOMOTIVE_DESIGN {{ 1 0 10303 214 1 1 1 1 }}'));\nENDSEC;\nDATA;\n{}ENDSEC;\n\
             END-ISO-10303-21;\n",
            text(name),
            self.data
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::export::samples;

    #[test]
    fn every_reference_points_back_to_an_entity_and_every_edge_is_shared() {
        for (name, plan) in samples::all() {
            let step = panels_step(&plan.spec.name, &plan.panels);
            let mut count = 0;
            for line in step.lines().filter(|line| line.starts_with('#')) {
                let (number, entity) = line[1..].split_once('=').unwrap();
                count += 1;
                assert_eq!(number.parse::<usize>().unwrap(), count, "{name}");
                for reference in entity.split('#').skip(1) {
                    let digits = reference.chars().take_while(char::is_ascii_digit).count();
                    assert!(reference[..digits].parse::<usize>().unwrap() < count, "{name}: {line}");
                }
            }
            assert_eq!(step.matches("MANIFOLD_SOLID_BREP").count(), plan.panels.len(), "{name}");
            let faces: usize = plan.panels.iter().map(|panel| panel.blank().unwrap().faces().len()).sum();
            assert_eq!(step.matches("ADVANCED_FACE").count(), faces);
            let edges: usize = plan.panels.iter().map(|panel| panel.blank().unwrap().edge_count()).sum();
            assert_eq!(step.matches("EDGE_CURVE").count(), edges);
            assert_eq!(step.matches(",.F.)").count(), edges);
            assert!(!step.contains("NaN") && !step.contains("inf"));
        }
    }

    #[test]
    fn names_are_written_in_the_alphabet_of_the_standard() {
        assert_eq!(text("Tom's \\ oak"), "'Tom''s \\\\ oak'");
        assert_eq!(text("größe ½\n"), "'gr\\X2\\00F6\\X0\\\\X2\\00DF\\X0\\e \\X2\\00BD\\X0\\\\X2\\000A\\X0\\'");
        assert_eq!(text("𝄞"), "'\\X4\\0001D11E\\X0\\'");
        let step = panels_step(&samples::hostile().spec.name, &samples::hostile().panels);
        assert!(step.is_ascii());
    }

    #[test]
    fn numbers_have_a_point_and_no_negative_zero() {
        assert_eq!(real(185.0), "185.");
        assert_eq!(real(-0.0), "0.");
        assert_eq!(real(-38.140_625), "-38.140625");
        assert_eq!(real(1e-7), "0.0000001");
    }

    #[test]
    fn the_same_panels_give_the_same_bytes() {
        let plan = samples::shelf();
        assert_eq!(panels_step("a", &plan.panels), panels_step("a", &plan.panels));
        assert!(panels_step("", &[]).contains("Hollow beam"));
    }
}
