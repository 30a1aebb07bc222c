//! The fasteners of the old deck.

use super::{OldBoards, StripOutInput};
use crate::money::{Figure, ThreePoint};
use crate::published::{
    OLD_EDGE_ROW_HALVES, OLD_FIELD_ROW_HALVES, seized_minutes, sound_bolt_minutes, sound_screw_minutes,
    spinning_minutes,
};
use serde::{Deserialize, Serialize};

/// What sort of fastener it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OldKind {
    /// A screw into the flange.
    Screw,
    /// A bolt with a nut below.
    Bolt,
}

/// What it does when it is turned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OldCondition {
    /// It comes out.
    #[default]
    Sound,
    /// It does not turn, or its recess is gone.
    Seized,
    /// It turns and does not come out.
    Spinning,
}

/// How it comes out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// It is turned out.
    BackOut,
    /// Its head is ground off.
    GrindHead,
    /// The board is cut in a ring around it, and its stub is ground flush later.
    RingCut,
}

/// Fasteners of the old deck that are alike.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct OldFastener {
    /// What sort they are.
    pub kind: OldKind,
    /// What they do when they are turned.
    #[serde(default)]
    pub condition: OldCondition,
    /// How many.
    #[cfg_attr(feature = "schema", schemars(range(max = 100_000)))]
    pub count: u32,
    /// How they are to come out. Left out: sound ones are backed out, spinning ones lose their heads, seized ones are ring-cut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub method: Option<Method>,
    /// Minutes for each. Left out: planning figures of the trade.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<ThreePoint>,
}

impl OldFastener {
    /// So many of a kind, in a condition.
    pub fn new(kind: OldKind, condition: OldCondition, count: u32) -> OldFastener {
        OldFastener { kind, condition, count, method: None, minutes: None }
    }
}

/// Fasteners that come out alike, with their time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct FastenerLine {
    /// What sort they are.
    pub kind: OldKind,
    /// What they do when they are turned.
    pub condition: OldCondition,
    /// How many: three times the same where they were counted.
    pub count: ThreePoint,
    /// How they come out.
    pub method: Method,
    /// Minutes for each.
    pub minutes: ThreePoint,
    /// People at it.
    pub people: u32,
    /// Hours of labour, rounded to hundredths.
    pub hours: ThreePoint,
    /// How it is done.
    pub how: String,
}

pub(super) fn lines(input: &StripOutInput<'_>, boards: &OldBoards) -> Vec<FastenerLine> {
    if input.fasteners.is_empty() {
        let screws = OldFastener::new(OldKind::Screw, OldCondition::Sound, 0);
        return vec![FastenerLine::new(&screws, estimate(input, boards))];
    }
    let counted = |old: &OldFastener| {
        let count = Figure::of(i64::from(old.count));
        FastenerLine::new(old, ThreePoint::new(count, count, count))
    };
    input.fasteners.iter().map(counted).collect()
}

/// Rows of screws on the members under boards of one width: two at each seam, one at each end, one on each member between.
fn estimate(input: &StripOutInput<'_>, boards: &OldBoards) -> ThreePoint {
    let boards = i64::from(boards.count);
    let members = i64::try_from(input.frame.members().len()).unwrap_or(0);
    let field = (members - boards - 1).max(0);
    let halves = |edge: i64, inner: i64| Figure::of((boards * 2 * edge + field * inner + 1).div_euclid(2));
    ThreePoint::new(
        halves(OLD_EDGE_ROW_HALVES.0, OLD_FIELD_ROW_HALVES.0),
        halves(OLD_EDGE_ROW_HALVES.1, OLD_FIELD_ROW_HALVES.1),
        halves(OLD_EDGE_ROW_HALVES.2, OLD_FIELD_ROW_HALVES.2),
    )
}

impl FastenerLine {
    fn new(old: &OldFastener, count: ThreePoint) -> FastenerLine {
        let method = old.method.unwrap_or(match old.condition {
            OldCondition::Sound => Method::BackOut,
            OldCondition::Seized => Method::RingCut,
            OldCondition::Spinning => Method::GrindHead,
        });
        let minutes = old.minutes.unwrap_or_else(|| match (old.kind, old.condition) {
            (OldKind::Screw, OldCondition::Sound) => sound_screw_minutes(),
            (OldKind::Bolt, OldCondition::Sound) => sound_bolt_minutes(),
            (_, OldCondition::Seized) => seized_minutes(),
            (_, OldCondition::Spinning) => spinning_minutes(),
        });
        let people = if old.kind == OldKind::Bolt && method == Method::BackOut { 2 } else { 1 };
        let all =
            |minutes: Figure, count: Figure| (minutes * count * Figure::of(i64::from(people))).over(Figure::of(60), 2);
        FastenerLine {
            kind: old.kind,
            condition: old.condition,
            count,
            method,
            minutes,
            people,
            hours: ThreePoint::new(
                all(minutes.low, count.low),
                all(minutes.likely, count.likely),
                all(minutes.high, count.high),
            ),
            how: how(old.kind, method).into(),
        }
    }
}

fn how(kind: OldKind, method: Method) -> &'static str {
    match (kind, method) {
        (OldKind::Screw, Method::BackOut) => "Clean the recess, lean on the driver, back it out.",
        (OldKind::Bolt, Method::BackOut) => "One holds the nut below, the other turns above.",
        (_, Method::GrindHead) => {
            "Grind the head off, lift the board over the shank, then drive the shank out or grind it flush. Sparks: clear what \
             burns, keep a fire watch."
        }
        (_, Method::RingCut) => {
            "Cut a ring through the board with a hole cutter just larger than the head, its pilot taken out, around the \
             shank; lift the board off the plug. Split the plug away and grind the stub flush later."
        }
    }
}
