//! How boards may lie, with the defaults where one is asked for or the deck leaves no other way.

use super::Resolver;
use crate::arrange::ArrangementKind;
use crate::job::check::Parts;
use crate::length::Length;
use crate::published::defaults;

/// In what manner the boards lie.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Arranging {
    /// True where the job asks for it.
    pub asked: bool,
    /// True where no sheet in stock reaches across.
    pub needed: bool,
    /// What to compare.
    pub compare: Vec<ArrangementKind>,
    /// What to build; none: the best.
    pub build: Option<ArrangementKind>,
    /// Members between butts of neighbouring rows.
    pub stagger: usize,
    /// Extent athwart of blocks.
    pub block_width: Length,
    /// Greatest spacing of screws into them.
    pub block_spacing: Length,
    /// Whether the nest chooses the seams.
    pub seams_by_nest: bool,
}

impl Arranging {
    /// True where arrangements are compared.
    pub fn compares(&self) -> bool {
        self.asked || self.needed
    }
}

impl Resolver {
    pub(super) fn arranging(&mut self, parts: &Parts<'_>, needed: bool, edge_spacing: Length) -> Arranging {
        let spec = parts.arrange;
        let asked = !spec.is_empty();
        // What nobody lays out is not assumed.
        let compares = asked || needed;
        let unless = |value: u32| (!compares).then_some(value);
        let stagger = self.count(spec.stagger.or(unless(0)), &defaults::STAGGER_MEMBERS);
        let width = spec.block_width.or((!compares).then_some(defaults::BLOCK_WIDTH.value));
        let mut compare = spec.compare.clone().unwrap_or_else(|| ArrangementKind::ALL.to_vec());
        let build = spec.build.unwrap_or_default().named();
        compare.extend(build);
        compare.sort_unstable();
        compare.dedup();
        Arranging {
            asked,
            needed,
            compare,
            build,
            stagger: usize::try_from(stagger).unwrap_or(usize::MAX),
            block_width: self.length(width, &defaults::BLOCK_WIDTH),
            block_spacing: spec.block_spacing.unwrap_or(edge_spacing),
            seams_by_nest: spec.seams_by_nest.unwrap_or(false),
        }
    }
}
