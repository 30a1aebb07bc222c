//! Cautions about a deck of which part stays.

use super::Caution;
use crate::length::{Length, Notation};

/// A step between two boards above this shows through the covering: PS 1-19 leaves 1/32 in within tolerance.
const STEP: (i64, i64) = (1, 32);

/// What is said of the patches of a deck.
#[derive(Debug, Clone, Default)]
pub struct PatchFindings {
    /// The new panels.
    pub panels: Vec<String>,
    /// Edges of old boards up to which damage reaches within the margin, in words.
    pub probe: Vec<String>,
    /// Thickness of the old boards, where it was measured.
    pub old: Option<Length>,
    /// Thickness of the new ones.
    pub new: Length,
}

/// Cautions about patches.
pub fn patch(findings: &PatchFindings, notation: &Notation) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    let step = findings.old.map(|old| (old, (old - findings.new).abs()));
    let thickness = match step {
        None => vec!["old boards not measured".to_owned()],
        Some((old, step)) if step > Length::inch_fraction(STEP.0, STEP.1) => {
            vec![format!("old {}, new {}: a step of {}", say(old), say(findings.new), say(step))]
        }
        Some(_) => Vec::new(),
    };
    let found = [
        Caution::triggered(
            "patch-probe",
            findings.probe.clone(),
            "Damage comes near to these edges of old boards, and the patch ends there: probe the board beyond the seam before it is left.",
            "Water runs along a seam and into both boards.",
            "common practice, no source",
        ),
        Caution::triggered(
            "patch-thickness",
            thickness,
            "Match the thickness of old and new boards: measure both at the joint, and plane, pack or fair the step.",
            "A step of 1/32 in shows through vinyl; old boards have swollen and worn.",
            "PS 1-19, thickness tolerance; common practice",
        ),
        Caution::triggered(
            "patch-covering",
            findings.panels.clone(),
            "The old covering has to be cut back beyond each joint and made good over it: see that the same stuff can be had.",
            "A new patch under an old covering leaves a joint in it that water finds.",
            "common practice, no source",
        ),
    ];
    found.into_iter().flatten().collect()
}
