//! Strips under the edge of an opening that is framed.

use crate::frame::Frame;
use crate::geometry::Bounds;
use crate::length::Length;
use crate::outline::Opening;

/// A strip that a flange leaves no more of than this is left out: the board lies on the flange there. Common practice, no
/// source.
const LEAST: i64 = 1;

/// The strips under an opening's edge, each of that width and between the flanges: forward and aft of it over its whole
/// breadth, then at its sides.
///
/// The tops of the flanges bear the board, so strips end at them.
///
/// # Examples
/// A hatch of 12 by 20 in a bay that is 22 clear: four strips. One that crosses a member: its sides are in two pieces each.
/// ```
/// use deck_core::frame::{Frame, FrameSpec};
/// use deck_core::openings::framing;
/// use deck_core::outline::{Opening, OpeningShape};
/// use deck_core::Length;
/// let inches = Length::inches;
/// let frame = Frame::new(&FrameSpec::regular(inches(0), inches(96), inches(24), inches(2)))?;
/// let hatch = |x, depth| {
///     let (y, width, corner_radius) = (inches(30), inches(20), inches(2));
///     Opening::new("hatch", OpeningShape::Rectangle { x: inches(x), y, depth: inches(depth), width, corner_radius })
/// };
/// assert_eq!(framing(&hatch(30, 12), &frame, inches(3)).len(), 4);
/// assert_eq!(framing(&hatch(30, 36), &frame, inches(3)).len(), 6);
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn framing(opening: &Opening, frame: &Frame, width: Length) -> Vec<Bounds> {
    let hole = opening.path().bounds();
    let (port, starboard) = (hole.port - width, hole.starboard + width);
    let ring = [
        Bounds { fore: hole.fore - width, aft: hole.fore, port, starboard },
        Bounds { fore: hole.aft, aft: hole.aft + width, port, starboard },
        Bounds { starboard: hole.port, port, ..hole },
        Bounds { port: hole.starboard, starboard, ..hole },
    ];
    let sides = hole.fore..hole.aft;
    let pieces = ring.into_iter().flat_map(|strip| between_flanges(strip, frame));
    // A piece at a side that is no longer than it is wide holds nothing: the board lies on the flange beside it.
    let holds = |piece: &Bounds| !sides.contains(&piece.fore) || piece.depth() > width;
    pieces.filter(holds).collect()
}

fn between_flanges(strip: Bounds, frame: &Frame) -> Vec<Bounds> {
    let mut free = crate::math::IntervalSet::of(strip.fore.nanometres(), strip.aft.nanometres());
    for member in frame.members() {
        free.remove_open(member.fore.nanometres(), member.aft.nanometres());
    }
    let piece = |&(fore, aft): &(i64, i64)| Bounds {
        fore: Length::from_nanometres(fore),
        aft: Length::from_nanometres(aft),
        ..strip
    };
    let pieces = free.intervals().iter().map(piece);
    pieces.filter(|piece| piece.depth() >= Length::inches(LEAST)).collect()
}
