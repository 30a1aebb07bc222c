//! Cautions about boards, seams and the members under them.

use super::Caution;
use crate::frame::{Condition, Frame};
use crate::length::{Length, Notation};
use crate::outline::{Outline, Rim};
use crate::seams::SeamLayout;

/// What a shop would rather have than must have.
#[derive(Debug, Clone, Copy)]
pub struct BoardWishes {
    /// Bearing below which to caution.
    pub bearing: Length,
    /// Board width below which to caution.
    pub width: Length,
    /// Members under a board below which to caution.
    pub supports: usize,
    /// Overhang past the first and last flange above which to caution.
    pub overhang: Length,
    /// Overhang past a member's end above which to caution.
    pub side_overhang: Length,
}

const PRACTICE: &str = "common practice, no source";

/// Cautions about the boards of a layout, or about frame and outline alone where there is none.
pub fn boards(
    layout: Option<&SeamLayout>,
    frame: &Frame,
    outline: &Outline,
    wishes: &BoardWishes,
    notation: &Notation,
) -> Vec<Caution> {
    let say = |length: Length| notation.text(length);
    let mut found: Vec<Option<Caution>> = Vec::new();
    if let Some(layout) = layout {
        found.push(narrow_flanges(layout, &say));
        found.push(little_bearing(layout, wishes.bearing, &say));
        found.push(few_supports(layout, wishes.supports));
        found.push(narrow_boards(layout, wishes.width, &say));
    }
    found.push(overhangs(frame, outline, wishes.overhang, &say));
    found.push(side_overhangs(frame, outline, wishes.side_overhang, &say));
    found.push(damaged(frame));
    found.push(notch(outline));
    found.push(notch_over_member(outline, frame));
    found.into_iter().flatten().collect()
}

fn narrow_flanges(layout: &SeamLayout, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let short = layout.seams.iter().filter(|seam| seam.short_by > Length::ZERO);
    let about =
        short.map(|seam| format!("seam {} on member {}: short by {}", seam.number, seam.member, say(seam.short_by)));
    Caution::triggered(
        "narrow-flange",
        about.collect(),
        "Two rows of fasteners do not fit these flanges. Stagger the rows, use one row with a cleat under the other board, or sister an angle to the member.",
        "Each row keeps its edge distance in board and in metal: gap + 2 (edge in board + edge in metal).",
        "the fastener maker's edge distances; licensed practice",
    )
}

fn little_bearing(layout: &SeamLayout, preferred: Length, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let bearing = |seam: &&crate::seams::Seam| seam.bearing_fore.min(seam.bearing_aft);
    let about = layout
        .seams
        .iter()
        .filter(|seam| bearing(seam) < preferred)
        .map(|seam| format!("seam {}: {}", seam.number, say(bearing(&seam))));
    let text = format!("These edges bear less than {}: saw and set them with care.", say(preferred));
    Caution::triggered("bearing", about.collect(), text, "Errors of sawing and setting come off the bearing.", PRACTICE)
}

fn few_supports(layout: &SeamLayout, preferred: usize) -> Option<Caution> {
    let few = layout.boards.iter().filter(|board| board.supports.len() < preferred);
    let about = few.map(|board| format!("board {}: {} members", board.number, board.supports.len()));
    let text = format!("These boards rest on fewer than {preferred} members.");
    Caution::triggered(
        "supports",
        about.collect(),
        text,
        "A board over one span sags more than one over two.",
        PRACTICE,
    )
}

fn narrow_boards(layout: &SeamLayout, preferred: Length, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = layout
        .boards
        .iter()
        .filter(|board| board.narrow)
        .map(|board| format!("board {}: {}", board.number, say(board.width)));
    let text = format!("These boards are narrower than {}.", say(preferred));
    Caution::triggered(
        "narrow-board",
        about.collect(),
        text,
        "A narrow board is weak and moves with the seams beside it.",
        PRACTICE,
    )
}

fn overhangs(frame: &Frame, outline: &Outline, most: Length, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let bow = frame.members().first().map(|member| ("bow", member.fore));
    let stern = frame.members().last().map(|member| ("stern", outline.length() - member.aft));
    let about = bow
        .into_iter()
        .chain(stern)
        .filter(|(_, overhang)| *overhang > most)
        .map(|(end, overhang)| format!("{end}: {}", say(overhang)));
    let text = format!("The deck overhangs its last member by more than {}.", say(most));
    Caution::triggered("overhang", about.collect(), text, "An overhanging edge is held on one side only.", PRACTICE)
}

fn side_overhangs(frame: &Frame, outline: &Outline, most: Length, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let about = frame.members().iter().flat_map(|member| {
        let port = member.port_end.map(|end| ("port", end));
        let starboard = member.starboard_end.map(|end| ("starboard", outline.beam() - end));
        port.into_iter()
            .chain(starboard)
            .filter(|(_, overhang)| *overhang > most)
            .map(|(side, overhang)| format!("member {}, {side}: {}", member.number, say(overhang)))
    });
    let text = format!("The deck overhangs these members' ends by more than {}.", say(most));
    Caution::triggered(
        "side-overhang",
        about.collect(),
        text,
        "An overhanging edge is held on one side only.",
        PRACTICE,
    )
}

fn damaged(frame: &Frame) -> Option<Caution> {
    let about = frame.members().iter().filter(|member| member.condition != Condition::Sound).map(|member| {
        let word = match member.condition {
            Condition::Cut => "cut",
            Condition::Corroded => "corroded",
            Condition::Bent | Condition::Sound => "bent",
        };
        format!("member {}: {word}", member.number)
    });
    Caution::triggered(
        "member-condition",
        about.collect(),
        "Have these members repaired or judged before boards go on them.",
        "The plan takes every member as sound.",
        "licensed practice; the boat builder's instructions",
    )
}

fn notch(outline: &Outline) -> Option<Caution> {
    let has = outline.path().sides().iter().any(|side| side.edge == Rim::Notch);
    let about = if has { vec!["motor notch".to_string()] } else { Vec::new() };
    Caution::triggered(
        "notch-to-edge",
        about,
        "Seal the notch's edges, keep its inside corners round, and see that deck beside it rests on a member.",
        "A notch open to the edge leaves two tongues that are held on fewer sides, and its cut edge drinks water.",
        PRACTICE,
    )
}

/// Members whose flange is not under deck all the way, where the notch is.
fn notch_over_member(outline: &Outline, frame: &Frame) -> Option<Caution> {
    let corners = outline.path().walk().filter(|(side, _)| side.edge == Rim::Notch);
    let fore = corners.map(|(side, to)| side.from.x.min(to.x)).min()?;
    let about = frame.members().iter().filter(|member| member.aft > fore && member.fore < outline.length());
    Caution::triggered(
        "notch-over-member",
        about.map(|member| format!("notch over member {}", member.number)).collect(),
        "Measure where these members end beside the notch, and give their ends. Do not cut a member that runs through it.",
        "The plan takes a member as running from side to side; the cross members hold the tubes together.",
        "licensed practice; the boat builder's instructions",
    )
}
