//! Cautions about what errors leave of a bearing.

use super::Caution;
use crate::length::{Length, Notation};
use crate::seams::{BearingTolerance, SeamTolerance};

/// Seams where a board may bear less than the least when every error is at its limit; `mend` says what would help.
pub fn tolerance(seams: &[SeamTolerance], least: Length, mend: &[String], notation: &Notation) -> Option<Caution> {
    let say = |length: Length| notation.text(length);
    let side = |name: &str, bearing: &BearingTolerance| {
        let short = format!("{name} {} at worst, {} under", say(bearing.worst), say(-bearing.margin));
        bearing.margin.is_negative().then(|| format!("{short}, chance {:.2} %", bearing.chance_short * 100.0))
    };
    let about = seams.iter().filter_map(|seam| {
        let sides = [side("fore board", &seam.fore), side("aft board", &seam.aft)];
        let sides: Vec<String> = sides.into_iter().flatten().collect();
        (!sides.is_empty()).then(|| format!("seam {} on member {}: {}", seam.seam, seam.member, sides.join("; ")))
    });
    let text = format!(
        "Errors of measuring, sawing and setting can leave these edges less than {} of bearing. {}",
        say(least),
        mend.join(" ")
    );
    Caution::triggered(
        "tolerance",
        about.collect(),
        text.trim_end(),
        "Errors add up from board to board, and come off the bearing.",
        "common practice, no source",
    )
}
