//! What a layout of seams must keep, and what it would rather have.

use crate::length::Length;

/// The rules that a layout is found under. There are no defaults here; a job's settings have them, with their sources.
///
/// # Examples
/// ```
/// use deck_core::{seams::Rules, Length};
/// let rules = Rules::new("1/2 in".parse()?).gap("1/8 in".parse()?).rows("3/8 in".parse()?, "3/8 in".parse()?);
/// assert_eq!(rules.least_flange(), "1-5/8 in".parse()?);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Rules {
    /// Gap between boards.
    pub gap: Length,
    /// How much shorter than the outline the boards may finish at the stern.
    pub end_tolerance: Length,
    /// Least bearing of a board's edge on a flange.
    pub least_bearing: Length,
    /// Narrowest board that is allowed.
    pub least_width: Length,
    /// Boards narrower than this count against a layout.
    pub preferred_width: Length,
    /// Fewest members that a board may rest on.
    pub least_supports: usize,
    /// A fastener's edge distance in the board.
    pub edge_in_ply: Length,
    /// A fastener's edge distance in the flange.
    pub edge_in_metal: Length,
}

impl Rules {
    /// Rules with a least bearing and two supports to a board, and nothing else asked for.
    pub fn new(least_bearing: Length) -> Rules {
        Rules {
            gap: Length::ZERO,
            end_tolerance: Length::ZERO,
            least_bearing,
            least_width: Length::ZERO,
            preferred_width: Length::ZERO,
            least_supports: 2,
            edge_in_ply: Length::ZERO,
            edge_in_metal: Length::ZERO,
        }
    }

    /// With a gap between boards.
    #[must_use]
    pub fn gap(mut self, gap: Length) -> Rules {
        self.gap = gap;
        self
    }

    /// With a tolerance at the stern.
    #[must_use]
    pub fn end_tolerance(mut self, tolerance: Length) -> Rules {
        self.end_tolerance = tolerance;
        self
    }

    /// With a least and a preferred board width.
    #[must_use]
    pub fn widths(mut self, least: Length, preferred: Length) -> Rules {
        self.least_width = least;
        self.preferred_width = preferred;
        self
    }

    /// With another fewest number of members under a board.
    #[must_use]
    pub fn least_supports(mut self, supports: usize) -> Rules {
        self.least_supports = supports;
        self
    }

    /// With edge distances for the two rows of fasteners at a seam: in the board and in the flange.
    #[must_use]
    pub fn rows(mut self, in_ply: Length, in_metal: Length) -> Rules {
        self.edge_in_ply = in_ply;
        self.edge_in_metal = in_metal;
        self
    }

    /// The narrowest flange on which two boards can meet with one row of fasteners each.
    ///
    /// # Method
    /// `gap + 2 (edge in ply + edge in metal)`, metal edge to metal edge. Derived here, no source; the distances are
    /// the caller's.
    pub fn least_flange(&self) -> Length {
        self.gap + (self.edge_in_ply + self.edge_in_metal) * 2
    }
}
