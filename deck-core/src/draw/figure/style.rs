//! Lines and greys by what they are for. Everything is black or grey: a shop prints without colour.

use super::Micrometres;

/// A line, by its role on the sheet.
///
/// # Method
/// Widths are steps of the series 0.13, 0.18, 0.25, 0.35, 0.5, 0.7 mm (ISO 128, from memory); which role takes which step is
/// ours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// The edge of the thing that is shown.
    Outline,
    /// A line that is cut.
    Cut,
    /// Edges of lesser things, ruled frames.
    Thin,
    /// An edge below what is shown.
    Hidden,
    /// A middle line.
    Centre,
    /// Dimension lines, leaders, hatches.
    Fine,
}

impl Line {
    /// Every role.
    pub const ALL: [Line; 6] = [Line::Outline, Line::Cut, Line::Thin, Line::Hidden, Line::Centre, Line::Fine];

    /// Width of the line.
    pub const fn width(self) -> Micrometres {
        match self {
            Line::Outline => 700,
            Line::Cut => 500,
            Line::Thin => 350,
            Line::Hidden | Line::Centre => 250,
            Line::Fine => 180,
        }
    }

    /// Lengths of dashes and of the spaces between them in turn; empty for an unbroken line.
    pub const fn dashes(self) -> &'static [Micrometres] {
        match self {
            Line::Outline | Line::Thin | Line::Fine => &[],
            Line::Cut => &[4500, 1000],
            Line::Hidden => &[1800, 900],
            Line::Centre => &[5000, 800, 800, 800],
        }
    }

    /// True where a text must not lie on the line even with a white patch behind it.
    pub const fn is_heavy(self) -> bool {
        matches!(self, Line::Outline | Line::Cut | Line::Thin)
    }
}

/// How dark a filled area is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tone {
    /// Paper.
    White,
    /// Just told from paper; words can lie on it.
    Pale,
    /// A light grey; words can lie on it.
    Light,
    /// A grey that stands out.
    Middle,
    /// Black.
    Black,
}

impl Tone {
    /// From 0, black, to 255, white.
    pub const fn lightness(self) -> u8 {
        match self {
            Tone::White => 255,
            Tone::Pale => 238,
            Tone::Light => 215,
            Tone::Middle => 150,
            Tone::Black => 0,
        }
    }
}
