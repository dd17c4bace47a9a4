use proptest::prelude::*;
use proptest::strategy::ValueTree;

use super::super::body::hollow_body;
use super::super::body_laws_tests::body;
use super::*;

/// The faces that a shell was made from.
fn faces_of(shell: &Shell) -> Vec<OuterFace> {
    let face = |(face, tag): (&ShellFace, u32)| OuterFace {
        id: face.id,
        plane: shell.outer.face(tag).unwrap().plane,
        presence: face.thickness_mm.map_or(Presence::Open, |thickness_mm| Presence::Board { thickness_mm }),
        grain: shell.panel(face.id).map_or(Vec3::X, |panel| panel.frame.u),
    };
    shell.faces.iter().zip(0..).map(face).collect()
}

/// Greatest distance of a corner of one solid outside the other, either way, mm.
fn apart(one: &ConvexSolid, other: &ConvexSolid) -> f64 {
    let out = |of: &ConvexSolid, from: &ConvexSolid| {
        let beyond = |point: &Vec3| of.faces().map(|face| face.plane.signed_distance(*point)).fold(f64::MIN, f64::max);
        from.vertices().iter().map(beyond).fold(f64::MIN, f64::max)
    };
    out(one, other).max(out(other, one))
}

proptest! {
    /// The layers between body and hollow are what is left when the body is cut plane by plane.
    #[test]
    fn layers_are_what_the_planes_leave(input in body()) {
        let Ok(body) = hollow_body(&input) else { return Ok(()) };
        for shell in &body.legs {
            let faces = faces_of(shell);
            let boards = boards_of(&faces).unwrap();
            let mut cutter = Cutter::default();
            let cut_hollow = hollow_solid(&shell.outer, &faces, &boards, &mut cutter).unwrap();
            let Some(hollow) = same_shape(&shell.outer, &faces, &boards) else { continue };
            prop_assert!(apart(&hollow, &cut_hollow) < 1e-7);
            prop_assert_eq!(hollow.faces().len(), cut_hollow.faces().len());
            for board in &boards {
                let layer = layer_of(board, &boards, &faces, &shell.outer, &hollow).unwrap();
                let cut = cut_of(board, &boards, &shell.outer, &Joints { butts: &[] }, &mut cutter).unwrap();
                prop_assert!(apart(&layer, &cut) < 1e-7, "{}", board.face.id);
                prop_assert!((layer.volume() - cut.volume()).abs() <= 1e-9 * cut.volume(), "{}", board.face.id);
                let tags = |solid: &ConvexSolid| {
                    let mut tags: Vec<u32> = solid.faces().map(|face| face.tag).collect();
                    tags.sort_unstable();
                    tags
                };
                prop_assert_eq!(tags(&layer), tags(&cut), "{}", board.face.id);
            }
        }
    }
}

#[test]
fn usual_bodies_are_layered() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let bodies = (0..200).map(|_| body().new_tree(&mut runner).unwrap().current());
    let built: Vec<Shell> = bodies.filter_map(|input| hollow_body(&input).ok()).flat_map(|body| body.legs).collect();
    let layered = built.iter().filter(|shell| {
        let faces = faces_of(shell);
        same_shape(&shell.outer, &faces, &boards_of(&faces).unwrap()).is_some()
    });
    let count = layered.count();
    assert!(10 * count > 7 * built.len(), "{count} of {}", built.len());
}
