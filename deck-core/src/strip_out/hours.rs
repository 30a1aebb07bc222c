//! Hours of strip-out, by task.

use super::{FastenerLine, OldBoards, OldCovering, StripOutInput};
use crate::money::{Figure, ThreePoint};
use serde::{Deserialize, Serialize};

/// Hours of a task.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct HoursLine {
    /// What is done.
    pub task: String,
    /// Its hours, rounded to hundredths.
    pub hours: ThreePoint,
    /// What they rest on.
    pub basis: String,
}

pub(super) fn hours(input: &StripOutInput<'_>, boards: &OldBoards, fasteners: &[FastenerLine]) -> Vec<HoursLine> {
    let mut lines = Vec::new();
    if input.covering != OldCovering::None {
        lines.push(HoursLine {
            task: "old covering".into(),
            hours: input.covering_hours,
            basis: match input.covering {
                OldCovering::Stapled => {
                    "planning figure of the trade or the shop's own; stapled, so its lower half".into()
                }
                _ => "planning figure of the trade or the shop's own".into(),
            },
        });
    }
    lines.push(HoursLine {
        task: "fasteners".into(),
        hours: fasteners.iter().map(|line| line.hours).sum(),
        basis: if input.fasteners.is_empty() {
            "estimated from rows of sound screws; nobody has counted or tried them".into()
        } else {
            "as counted, by kind and condition".into()
        },
    });
    let each: ThreePoint = input.board_minutes;
    lines.push(HoursLine {
        task: "old boards".into(),
        hours: each.times(Figure::of(i64::from(boards.count))).over(Figure::of(60), 2),
        basis: format!(
            "{} boards of {}, {} or {} minutes, pried up, carried off; two people at a wet one",
            boards.count, each.low, each.likely, each.high
        ),
    });
    lines
}
