//! A sheet as a tree of cuts: strips beside strips, each cut from edge to edge of what it divides.
//!
//! A strip lies along one axis and holds its members one behind the other over its full width; what is left of its
//! length is free, at its end. The order of the members does not matter for what fits, so that all free length of a
//! strip is one piece. A member is a part that fills the width, wood that cannot be used, or a strip along the other
//! axis.

/// The axis along which the members of a strip follow one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Axis {
    X,
    Y,
}

impl Axis {
    pub(crate) fn other(self) -> Self {
        match self {
            Axis::X => Axis::Y,
            Axis::Y => Axis::X,
        }
    }
}

/// A part in one of its positions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Lying {
    pub(crate) kind: u32,
    pub(crate) turned: u8,
    pub(crate) w: i64,
    pub(crate) h: i64,
}

#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Body {
    Part(Lying),
    Strip(Box<Strip>),
    Waste,
}

#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Member {
    pub(crate) extent: i64,
    pub(crate) body: Body,
}

#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Strip {
    pub(crate) axis: Axis,
    /// Width across the axis.
    pub(crate) cross: i64,
    pub(crate) members: Vec<Member>,
    /// Length left at the end.
    pub(crate) free: i64,
    pub(crate) role: Role,
}

/// What a strip is beyond a row of members.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Role {
    Plain,
    /// The members stay where they are, around flaws of the board; only what lies in them changes.
    Fixed,
    /// A whole board whose first cuts must divide this strip, unless a part is as long as it is.
    Leading,
}

/// Worth of free wood: more than in proportion to its area, so that it stays together.
#[inline]
pub(crate) fn worth(a: i64, b: i64) -> f64 {
    let area = a as f64 * b as f64;
    area * area.sqrt()
}

impl Strip {
    pub(crate) fn new(axis: Axis, w: i64, h: i64) -> Self {
        let (free, cross) = if axis == Axis::X { (w, h) } else { (h, w) };
        Self { axis, cross, members: Vec::new(), free, role: Role::Plain }
    }

    pub(crate) fn parts(&self, each: &mut impl FnMut(&Lying)) {
        for member in &self.members {
            match &member.body {
                Body::Part(lying) => each(lying),
                Body::Strip(strip) => strip.parts(each),
                Body::Waste => {}
            }
        }
    }

    /// Whether no part lies in it.
    pub(crate) fn is_empty(&self) -> bool {
        let mut empty = true;
        self.parts(&mut |_| empty = false);
        empty
    }

    /// Members that may be taken out, at any depth.
    pub(crate) fn size(&self) -> usize {
        self.members
            .iter()
            .map(|m| match &m.body {
                Body::Part(_) => 1,
                Body::Strip(strip) => usize::from(self.role != Role::Fixed) + strip.size(),
                Body::Waste => 0,
            })
            .sum()
    }

    /// Takes out every part; what is fixed around flaws stays.
    pub(crate) fn clear(&mut self) {
        if self.role == Role::Fixed {
            for member in &mut self.members {
                if let Body::Strip(strip) = &mut member.body {
                    strip.clear();
                }
            }
            return;
        }
        self.free += self.members.iter().map(|m| m.extent).sum::<i64>();
        self.members.clear();
    }

    /// Calls `each` for every way to put `lying` into this strip or one below; `level` is the stage of this strip's cuts.
    /// Returns how many strips were looked at.
    pub(crate) fn ways(
        &self,
        lying: Lying,
        level: u32,
        stages: u32,
        path: &mut Vec<u16>,
        each: &mut impl FnMut(&[u16], bool, f64),
    ) -> u64 {
        let mut visits = 1;
        let (along, across) = if self.axis == Axis::X { (lying.w, lying.h) } else { (lying.h, lying.w) };
        // Nothing below can hold what is larger than this strip.
        if across > self.cross {
            return visits;
        }
        if along <= self.free {
            let (rest, side) = (self.free - along, self.cross - across);
            let old = worth(self.free, self.cross);
            if side == 0 || level < stages {
                each(path, false, worth(rest, self.cross) + worth(along, side) - old);
            }
            let deepest = if rest == 0 { level + 1 } else { level + 2 };
            let kept = self.role == Role::Leading && self.members.is_empty();
            if side > 0 && rest > 0 && deepest <= stages && !kept {
                each(path, true, worth(self.free, side) + worth(rest, across) - old);
            }
        }
        for (k, member) in self.members.iter().enumerate() {
            if member.extent >= along
                && let Body::Strip(strip) = &member.body
            {
                path.push(k as u16);
                visits += strip.ways(lying, level + 1, stages, path, each);
                path.pop();
            }
        }
        visits + self.members.len() as u64 / 4
    }

    /// Puts a part in along a way that `ways` gave.
    pub(crate) fn insert(&mut self, path: &[u16], across_first: bool, lying: Lying) {
        if let [first, rest @ ..] = path {
            if let Some(Member { body: Body::Strip(strip), .. }) = self.members.get_mut(usize::from(*first)) {
                strip.insert(rest, across_first, lying);
            }
            return;
        }
        let axis = self.axis;
        let (along, across) = if axis == Axis::X { (lying.w, lying.h) } else { (lying.h, lying.w) };
        let part = Body::Part(lying);
        if across_first {
            let inner = Strip {
                axis,
                cross: across,
                members: vec![Member { extent: along, body: part }],
                free: self.free - along,
                role: Role::Plain,
            };
            let outer = Strip {
                axis: axis.other(),
                cross: self.free,
                members: vec![Member { extent: across, body: Body::Strip(Box::new(inner)) }],
                free: self.cross - across,
                role: Role::Plain,
            };
            self.members.push(Member { extent: self.free, body: Body::Strip(Box::new(outer)) });
            self.free = 0;
            return;
        }
        let body = if across == self.cross {
            part
        } else {
            Body::Strip(Box::new(Strip {
                axis: axis.other(),
                cross: along,
                members: vec![Member { extent: across, body: part }],
                free: self.cross - across,
                role: Role::Plain,
            }))
        };
        self.members.push(Member { extent: along, body });
        self.free -= along;
    }

    /// Takes out the member number `at` in the order of `size`, with all that is in it; what it held goes to `out`.
    /// False when there is no such member.
    pub(crate) fn remove(&mut self, at: &mut usize, out: &mut Vec<u32>) -> bool {
        for k in 0..self.members.len() {
            let Some(member) = self.members.get_mut(k) else { return false };
            let own = self.role != Role::Fixed && !matches!(member.body, Body::Waste);
            if own && *at == 0 {
                let member = self.members.swap_remove(k);
                match member.body {
                    Body::Part(lying) => out.push(lying.kind),
                    Body::Strip(strip) => strip.parts(&mut |lying| out.push(lying.kind)),
                    Body::Waste => {}
                }
                self.free += member.extent;
                return true;
            }
            if own {
                *at -= 1;
            }
            if let Body::Strip(strip) = &mut member.body
                && strip.remove(at, out)
            {
                if self.role != Role::Fixed {
                    self.tidy(k);
                }
                return true;
            }
        }
        false
    }

    /// After something was taken out of member `k`: an empty strip is free wood again, a strip filled by one member is
    /// that member.
    fn tidy(&mut self, k: usize) {
        let Some(member) = self.members.get_mut(k) else { return };
        let Body::Strip(strip) = &mut member.body else { return };
        if strip.members.is_empty() {
            self.free += member.extent;
            self.members.swap_remove(k);
            return;
        }
        if strip.members.len() == 1 && strip.free == 0 {
            let Some(only) = strip.members.pop() else { return };
            match only.body {
                Body::Strip(inner) => {
                    self.members.swap_remove(k);
                    self.free += inner.free;
                    self.members.extend(inner.members);
                }
                body => member.body = body,
            }
        }
    }
}
