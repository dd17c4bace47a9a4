//! From a tree of cuts to places, cuts in their order, and what is left over.

use super::engine::tree::{Axis, Body, Lying, Member, Role, Strip};

/// A part on its board, without its kerf.
pub(super) struct Placed {
    pub(super) kind: u32,
    pub(super) turned: u8,
    pub(super) x: i64,
    pub(super) y: i64,
}

/// A cut from edge to edge of the piece it divides.
pub(super) struct Sawn {
    pub(super) stage: u32,
    /// The axis that is divided: along X the cut goes across the board.
    pub(super) axis: Axis,
    /// The kept edge, from the corner of the board.
    pub(super) at: i64,
    /// How far from the near edge of the piece that is divided.
    pub(super) set: i64,
    /// What is lost beyond the kept edge: the kerf, and more between the members of a group.
    pub(super) loss: i64,
    /// Ends of the cut on the other axis.
    pub(super) across: (i64, i64),
}

/// A board cut up.
#[derive(Default)]
pub(super) struct Laid {
    pub(super) places: Vec<Placed>,
    /// In the order in which they are made.
    pub(super) cuts: Vec<Sawn>,
    /// Clear wood that is left over: corner and size.
    pub(super) free: Vec<(i64, i64, i64, i64)>,
    pub(super) stages: u32,
}

struct Layer<'t> {
    kerf: (i64, i64),
    expand: &'t dyn Fn(&Lying) -> Option<Strip>,
    laid: Laid,
}

/// Lays out a board of a usable size, which includes one kerf beyond its far edges; `expand` gives what a part is cut into.
pub(super) fn lay(
    root: &Strip,
    (w, h): (i64, i64),
    kerf: (i64, i64),
    expand: &dyn Fn(&Lying) -> Option<Strip>,
) -> Laid {
    let mut layer = Layer { kerf, expand, laid: Laid::default() };
    layer.strip(root, (0, 0), (w, h), 0);
    // Stage after stage; within a stage piece by piece from the near end.
    layer.laid.cuts.sort_by_key(|cut| cut.stage);
    layer.laid
}

impl Layer<'_> {
    fn strip(&mut self, strip: &Strip, (x, y): (i64, i64), (w, h): (i64, i64), before: u32) {
        let along_x = strip.axis == Axis::X;
        let (start, length, across) = if along_x { (x, w, (y, h)) } else { (y, h, (x, w)) };
        let (kerf, cross_kerf) = if along_x { self.kerf } else { (self.kerf.1, self.kerf.0) };
        let end = start + length;
        let mut members: Vec<&Member> = strip.members.iter().collect();
        if strip.role != Role::Fixed {
            // Equal settings one after the other, large pieces first.
            members.sort_by_key(|member| core::cmp::Reverse(member.extent));
        }
        let filled: i64 = members.iter().map(|member| member.extent).sum();
        let cut_here = members.len() > 1 || (!members.is_empty() && filled < length);
        let stage = before + u32::from(cut_here);
        // Flaws, and wood between them, from which a cut would leave nothing.
        let thin = |member: &Member| match &member.body {
            Body::Waste => member.extent < kerf,
            Body::Strip(inner) => member.extent <= kerf && inner.is_empty(),
            Body::Part(_) => false,
        };
        // Thin ones at the near edge are trimmed off.
        let lead: i64 = members.iter().take_while(|member| thin(member)).map(|member| member.extent).sum();
        if lead > 0 && lead < length {
            let across = (across.0, across.0 + across.1 - cross_kerf);
            self.laid.cuts.push(Sawn { stage, axis: strip.axis, at: start, set: 0, loss: lead.max(kerf), across });
            self.laid.stages = self.laid.stages.max(stage);
        }
        let mut at = start;
        for (k, member) in members.iter().enumerate() {
            let next = at + member.extent;
            // What is thinner than a kerf goes with the cut before it.
            let beyond: i64 = members.iter().skip(k + 1).take_while(|next| thin(next)).map(|next| next.extent).sum();
            if next < end && !thin(member) {
                self.laid.cuts.push(Sawn {
                    stage,
                    axis: strip.axis,
                    at: next - kerf,
                    set: member.extent - kerf,
                    loss: kerf + beyond,
                    across: (across.0, across.0 + across.1 - cross_kerf),
                });
                self.laid.stages = self.laid.stages.max(stage);
            }
            let (corner, size) = if along_x { ((at, y), (member.extent, h)) } else { ((x, at), (w, member.extent)) };
            match &member.body {
                Body::Part(lying) => match (self.expand)(lying) {
                    Some(inner) => self.strip(&inner, corner, size, stage),
                    None => self.part(lying, corner, size, stage),
                },
                // Where no part lies nothing is cut, not even a flaw.
                Body::Strip(inner) if inner.role == Role::Fixed && inner.is_empty() => {}
                Body::Strip(inner) => self.strip(inner, corner, size, stage),
                Body::Waste => {}
            }
            at = next;
        }
        let (rest, cross) = (end - at - kerf, across.1 - cross_kerf);
        if rest > 0 && cross > 0 {
            let free = if along_x { (at, y, rest, cross) } else { (x, at, cross, rest) };
            self.laid.free.push(free);
        }
    }

    /// A part in a cell; where the cell is larger, which only a common unit of all sizes can bring about, it is trimmed.
    fn part(&mut self, lying: &Lying, (x, y): (i64, i64), (w, h): (i64, i64), before: u32) {
        let mut stage = before;
        for (axis, cell, size, kerf, near, across) in [
            (Axis::X, w, lying.w, self.kerf.0, x, (y, y + h - self.kerf.1)),
            (Axis::Y, h, lying.h, self.kerf.1, y, (x, x + lying.w - self.kerf.0)),
        ] {
            if size < cell {
                stage += 1;
                self.laid.cuts.push(Sawn { stage, axis, at: near + size - kerf, set: size - kerf, loss: kerf, across });
            }
        }
        self.laid.stages = self.laid.stages.max(stage);
        self.laid.places.push(Placed { kind: lying.kind, turned: lying.turned, x, y });
    }
}
