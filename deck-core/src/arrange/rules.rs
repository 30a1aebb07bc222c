//! What a division keeps, and the sheets it is made from.

use crate::length::Length;
use crate::seams::Rules;

/// What a division must keep. There are no defaults here; a job's settings have them, with their sources.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct ArrangeRules {
    /// What its seams athwart keep, and the gap between boards.
    pub seams: Rules,
    /// How many members lie at the least between butts of neighbouring rows, counted from one to the other: 1 keeps them
    /// off the same member. Zero: they may meet, and so may the joints of neighbouring strips.
    pub stagger: usize,
    /// Extent athwart of the blocks under joints.
    pub block_width: Length,
    /// Greatest spacing of screws into blocks.
    pub block_spacing: Length,
    /// Greatest overhang of a row past a member's end.
    pub side_overhang: Length,
    /// Width that the blade eats.
    pub kerf: Length,
}

impl ArrangeRules {
    /// Staggered by one member, with no overhang past members' ends and no kerf.
    pub fn new(seams: Rules, block_width: Length, block_spacing: Length) -> ArrangeRules {
        ArrangeRules { seams, stagger: 1, block_width, block_spacing, side_overhang: Length::ZERO, kerf: Length::ZERO }
    }

    /// With another stagger.
    #[must_use]
    pub fn stagger(mut self, members: usize) -> ArrangeRules {
        self.stagger = members;
        self
    }

    /// With an overhang allowed past members' ends.
    #[must_use]
    pub fn side_overhang(mut self, overhang: Length) -> ArrangeRules {
        self.side_overhang = overhang;
        self
    }

    /// With a blade that eats wood.
    #[must_use]
    pub fn kerf(mut self, kerf: Length) -> ArrangeRules {
        self.kerf = kerf;
        self
    }
}

/// A sheet as a division sees it, less its edge trims. A sheet without a strength axis stands twice, both ways round.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Ply {
    /// The sheet's label.
    pub label: String,
    /// Side along the strength axis.
    pub length: Length,
    /// Side across it.
    pub width: Length,
}

impl Ply {
    /// A sheet.
    pub fn new(label: impl Into<String>, length: Length, width: Length) -> Ply {
        Ply { label: label.into(), length, width }
    }
}
