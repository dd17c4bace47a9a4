//! Kinds of lines and fills.

/// A kind of line, by ISO 128-2.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Line {
    /// No line.
    None,
    /// Visible outlines and cut edges: continuous, wide.
    Outline,
    /// Show faces: continuous, extra wide.
    Show,
    /// Dimensions, leaders, hatching: continuous, narrow.
    Thin,
    /// Things behind the section that are seen but do not matter most: continuous, narrow, grey.
    Behind,
    /// Hidden edges and things away from the section: dashed, narrow.
    Hidden,
    /// Centre lines: long dash and dot, narrow.
    Centre,
    /// Other positions of a part: long dash and two dots, narrow.
    Phantom,
}

impl Line {
    /// The attributes of a stroke. Dashes are multiples of the line's width: 12 for a dash, 24 for a long one, 3 for a
    /// gap, half a width for a dot.
    pub(super) const fn attributes(self) -> &'static str {
        match self {
            Self::None => " stroke=\"none\"",
            Self::Outline => " stroke=\"#000\" stroke-width=\"0.5\"",
            Self::Show => " stroke=\"#000\" stroke-width=\"1\"",
            Self::Thin => " stroke=\"#000\" stroke-width=\"0.25\"",
            Self::Behind => " stroke=\"#777\" stroke-width=\"0.25\"",
            Self::Hidden => " stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"3 0.75\"",
            Self::Centre => " stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"6 0.75 0.12 0.75\"",
            Self::Phantom => " stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"6 0.75 0.12 0.75 0.12 0.75\"",
        }
    }
}

/// What fills a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Fill {
    /// Nothing.
    Nothing,
    /// The white of the paper, which hides what lies behind.
    White,
    /// Light grey: things that are there already.
    Grey,
    /// Black.
    Black,
}

impl Fill {
    pub(super) const fn attribute(self) -> &'static str {
        match self {
            Self::Nothing => "fill=\"none\"",
            Self::White => "fill=\"#fff\"",
            Self::Grey => "fill=\"#ececec\"",
            Self::Black => "fill=\"#000\"",
        }
    }
}
