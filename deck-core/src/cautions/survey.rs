//! Cautions about what was measured.

use super::Caution;
use crate::survey::Survey;

const PRACTICE: &str = "common practice, no source";

/// Cautions about readings that are wrong, that nothing checks, that disagree on the whole, and about a frame out of square.
pub fn survey(survey: &Survey) -> Vec<Caution> {
    let apart = |told: bool| {
        let blunders = survey.blunders.iter().filter(move |blunder| blunder.told_apart == told);
        blunders.map(|blunder| blunder.message.clone()).collect::<Vec<_>>()
    };
    let failed = survey.test.is_some_and(|test| !test.passes);
    let loose = if survey.unchecked.is_empty() { Vec::new() } else { vec![survey.unchecked.join(", ")] };
    let racked = survey.squaring.iter().filter(|squaring| squaring.pull.is_some());
    let boards = survey.old_boards.iter().flat_map(|boards| &boards.findings);
    let found = [
        Caution::triggered(
            "wrong-reading",
            apart(true),
            "These readings disagree with the rest and were left out. Read them again before anything is sawn.",
            "A wrong reading that is averaged in spoils every place near it.",
            PRACTICE,
        ),
        Caution::triggered(
            "doubtful-reading",
            apart(false),
            "One of several readings is wrong, and the others cannot tell which. The plan leaves out the likeliest; measure what is named before anything is sawn.",
            "With too few readings over, more than one of them explains the disagreement.",
            PRACTICE,
        ),
        Caution::triggered(
            "survey-disagrees",
            if failed { vec!["the readings as a whole".into()] } else { Vec::new() },
            "The readings disagree by more than their errors say. Look for a bent member or a tape that sagged, or state larger errors.",
            "Such a sum of squares arises by chance less than once in twenty times.",
            "this library's limit",
        ),
        Caution::triggered(
            "unchecked-reading",
            loose,
            "No other reading checks these: an error in them would not be seen. Measure one more distance to each point.",
            "A point that hangs on two readings is wherever they put it.",
            PRACTICE,
        ),
        Caution::triggered(
            "racked-frame",
            racked.map(|squaring| squaring.advice.clone()).collect(),
            "Square and brace the frame before boards go down, and measure both diagonals again.",
            "The old boards held the frame square; without them it can rack.",
            PRACTICE,
        ),
        Caution::triggered(
            "old-boards",
            boards.map(|finding| finding.message.clone()).collect(),
            "The old boards do not fit the members as measured. Go and look before the seams are laid.",
            "Old boards are evidence: a member that was missed, or read twice, shows in them.",
            PRACTICE,
        ),
    ];
    found.into_iter().flatten().collect()
}
