//! Cautions about openings: near a seam, an edge, a flange or each other.

use super::Caution;
use crate::frame::Frame;
use crate::geometry::{Bounds, polygon};
use crate::length::{Length, Notation};
use crate::outline::{Opening, OpeningShape, Outline};
use crate::seams::SeamLayout;

/// Least distances of openings, in inches: from a seam, from the deck's edge, from a flange where not framed, and the
/// least corner radius. Common practice, no source.
const FROM_SEAM: i64 = 3;
const FROM_EDGE: i64 = 4;
const FROM_FLANGE: i64 = 2;
const LEAST_RADIUS: i64 = 1;

const PRACTICE: &str = "common practice, no source";

/// Cautions about the openings of a deck.
pub fn openings(
    openings: &[Opening],
    layout: Option<&SeamLayout>,
    frame: &Frame,
    outline: &Outline,
    notation: &Notation,
) -> Vec<Caution> {
    let placed: Vec<(&Opening, Bounds)> = openings.iter().map(|opening| (opening, opening.path().bounds())).collect();
    let say = |length: Length| notation.text(length);
    [
        over_member(&placed, frame),
        near_flange(&placed, frame, &say),
        layout.and_then(|layout| near_seam(&placed, layout, &say)),
        near_edge(&placed, outline, &say),
        near_each_other(&placed, &say),
        sharp(openings, &say),
    ]
    .into_iter()
    .flatten()
    .collect()
}

type Placed<'a> = [(&'a Opening, Bounds)];

/// How far two stretches lie apart; below zero where they overlap.
fn apart(one: (Length, Length), other: (Length, Length)) -> Length {
    (other.0 - one.1).max(one.0 - other.1)
}

fn over_member(placed: &Placed<'_>, frame: &Frame) -> Option<Caution> {
    let about = placed.iter().flat_map(|(opening, bounds)| {
        let over = |member: &&crate::frame::CrossMember| {
            apart((bounds.fore, bounds.aft), (member.fore, member.aft)) < Length::ZERO
        };
        frame.members().iter().filter(over).map(|member| {
            let framed = if opening.framed { " (framed)" } else { "" };
            format!("{} over member {}{framed}", opening.name, member.number)
        })
    });
    Caution::triggered(
        "opening-over-member",
        about.collect(),
        "Do not cut these members. A framed lid may cross a member that stays whole; otherwise move the opening.",
        "The cross members hold the tubes together.",
        "licensed practice; the boat builder's instructions",
    )
}

fn near_flange(placed: &Placed<'_>, frame: &Frame, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let least = Length::inches(FROM_FLANGE);
    let about = placed.iter().filter(|(opening, _)| !opening.framed).flat_map(|(opening, bounds)| {
        frame.members().iter().filter_map(move |member| {
            let distance = apart((bounds.fore, bounds.aft), (member.fore, member.aft));
            let near = distance >= Length::ZERO && distance < least;
            near.then(|| format!("{}: {} from member {}", opening.name, say(distance), member.number))
        })
    });
    let text = format!("These openings are nearer than {} to a flange and not framed.", say(least));
    Caution::triggered(
        "opening-near-flange",
        about.collect(),
        text,
        "The strip of board that is left breaks.",
        PRACTICE,
    )
}

fn near_seam(placed: &Placed<'_>, layout: &SeamLayout, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let least = Length::inches(FROM_SEAM);
    let about = placed.iter().flat_map(|(opening, bounds)| {
        // A butt in another row of boards is no seam of the opening's board.
        let beside = |seam: &&crate::seams::Seam| {
            seam.lane
                .is_none_or(|lane| apart((bounds.port, bounds.starboard), (lane.port, lane.starboard)) < Length::ZERO)
        };
        layout.seams.iter().filter(beside).filter_map(move |seam| {
            let distance = apart((bounds.fore, bounds.aft), (seam.fore, seam.aft));
            (distance < least).then(|| format!("{}: {} from seam {}", opening.name, say(distance), seam.number))
        })
    });
    let text = format!("These openings are nearer than {} to a seam.", say(least));
    Caution::triggered("opening-near-seam", about.collect(), text, "The strip of board that is left breaks.", PRACTICE)
}

fn near_edge(placed: &Placed<'_>, outline: &Outline, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let least = Length::inches(FROM_EDGE);
    let about = placed.iter().filter(|(opening, _)| {
        // Grown by the distance, the opening still lies within the deck.
        let grown = grown(opening, least);
        !polygon::contains(outline.path(), &grown)
    });
    let text = format!("These openings are nearer than {} to the deck's edge.", say(least));
    let about = about.map(|(opening, _)| opening.name.clone()).collect();
    Caution::triggered("opening-near-edge", about, text, "The strip of board that is left breaks.", PRACTICE)
}

/// The opening with every side moved outwards.
fn grown(opening: &Opening, by: Length) -> crate::geometry::Path<()> {
    let shape = match opening.shape {
        OpeningShape::Round { x, y, diameter } => OpeningShape::Round { x, y, diameter: diameter + by * 2 },
        OpeningShape::Rectangle { x, y, depth, width, corner_radius } => OpeningShape::Rectangle {
            x: x - by,
            y: y - by,
            depth: depth + by * 2,
            width: width + by * 2,
            corner_radius: corner_radius + by,
        },
    };
    Opening::new(opening.name.clone(), shape).path()
}

fn near_each_other(placed: &Placed<'_>, say: &impl Fn(Length) -> String) -> Option<Caution> {
    let mut about = Vec::new();
    for (index, (one, bounds)) in placed.iter().enumerate() {
        for (other, others) in &placed[index + 1..] {
            let along = apart((bounds.fore, bounds.aft), (others.fore, others.aft)).max(Length::ZERO);
            let across = apart((bounds.port, bounds.starboard), (others.port, others.starboard)).max(Length::ZERO);
            let distance = along.hypotenuse(across);
            let size = [bounds, others].map(|bounds| bounds.depth().min(bounds.breadth()));
            if distance < size[0].min(size[1]) {
                about.push(format!("{} and {}: {} apart", one.name, other.name, say(distance)));
            }
        }
    }
    Caution::triggered(
        "openings-near-each-other",
        about,
        "These openings are nearer to each other than the smaller of them is wide.",
        "The strip of board that is left breaks.",
        PRACTICE,
    )
}

fn sharp(openings: &[Opening], say: &impl Fn(Length) -> String) -> Option<Caution> {
    let least = Length::inches(LEAST_RADIUS);
    let about = openings.iter().filter_map(|opening| match opening.shape {
        OpeningShape::Rectangle { corner_radius, .. } if corner_radius < least => {
            Some(format!("{}: {}", opening.name, say(corner_radius)))
        }
        _ => None,
    });
    let text = format!("Round the corners of these openings to {} at least.", say(least));
    Caution::triggered("sharp-corner", about.collect(), text, "Cracks start in sharp inside corners.", PRACTICE)
}
