//! How a panel lies on the sheet that it is sawn from, as the sawyer sees it.
//!
//! A sheet is drawn with its length to the right and its width down. With the good face up, a panel lies on it as on the
//! deck seen from above with the bow up: its athwart length to the right, port at the left. A turned panel has made a
//! quarter turn: the bow is at the left, port below. With the good face down the sheet has been turned over about the
//! line that runs down the drawing, so that left and right of every panel are exchanged; where the cuts go stays as it is.
//!
//! ```text
//!   face up         turned           face down
//!     bow                              bow
//!   P ─── S       bow │ S            S ─── P
//!                     P
//! ```

use crate::draw::figure::{Direction, Mapping, Point, Scale};
use crate::job::Face;
use crate::length::Length;
use crate::nest::Placement;
use crate::panels::Panel;

/// A side of the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Toward {
    Left,
    Right,
    Up,
    Down,
}

/// How the deck's axes run on the drawing of a sheet: what runs to the right, and what runs down.
pub(super) fn directions(turned: bool, face: Face) -> (Direction, Direction) {
    match (turned, face) {
        (false, Face::Up) => (Direction::Y, Direction::X),
        (false, Face::Down) => (Direction::MinusY, Direction::X),
        (true, Face::Up) => (Direction::X, Direction::MinusY),
        (true, Face::Down) => (Direction::MinusX, Direction::MinusY),
    }
}

/// The mapping that lays a panel, in deck coordinates, into its place on the drawn sheet.
pub(super) fn mapping(panel: &Panel, placement: &Placement, face: Face, sheet: &Mapping) -> Mapping {
    let (right, down) = directions(placement.turned, face);
    let corner = sheet.point(placement.x, placement.y);
    let at_corner = |direction: Direction| match direction {
        Direction::X => panel.bounds.fore,
        Direction::MinusX => panel.bounds.aft,
        Direction::Y => panel.bounds.port,
        Direction::MinusY => panel.bounds.starboard,
    };
    // The panel's corner that comes to lie at the placement's own.
    let zero = Mapping { scale: sheet.scale, origin: Point::default(), right, down };
    let along = |direction: Direction| {
        let lengths = match direction {
            Direction::X | Direction::MinusX => (at_corner(direction), Length::ZERO),
            Direction::Y | Direction::MinusY => (Length::ZERO, at_corner(direction)),
        };
        zero.point(lengths.0, lengths.1)
    };
    Mapping { origin: corner.moved(-along(right).x, -along(down).y), ..zero }
}

/// Where the bow of a panel on a sheet is.
pub(super) fn bow(turned: bool, face: Face) -> Toward {
    toward(turned, face, Direction::MinusX)
}

/// Where port of a panel on a sheet is.
pub(super) fn port(turned: bool, face: Face) -> Toward {
    toward(turned, face, Direction::MinusY)
}

fn toward(turned: bool, face: Face, wanted: Direction) -> Toward {
    let (right, down) = directions(turned, face);
    let against = |direction: Direction| match direction {
        Direction::X => Direction::MinusX,
        Direction::MinusX => Direction::X,
        Direction::Y => Direction::MinusY,
        Direction::MinusY => Direction::Y,
    };
    if right == wanted {
        Toward::Right
    } else if against(right) == wanted {
        Toward::Left
    } else if down == wanted {
        Toward::Down
    } else {
        Toward::Up
    }
}

/// The scale of the mapping that all parts of a sheet share.
pub(super) fn sheet_mapping(scale: Scale, origin: Point) -> Mapping {
    Mapping { scale, origin, right: Direction::X, down: Direction::Y }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry;
    use crate::nest::Placement;
    use crate::panels::Edge;
    use crate::plan::{Plan, plan};

    /// A clip at port only, and a notch nearer to starboard, so that nothing is its own mirror image.
    fn lopsided(face: &str) -> Plan {
        let job = format!(
            r#"{{"schema": 1, "name": "Lopsided", "unit": "in",
                "deck": {{"outline": [{{"x": 0, "y": 12}}, {{"x": 0, "y": 96}}, {{"x": 48, "y": 96}}, {{"x": 48, "y": 80}},
                    {{"x": 40, "y": 80}}, {{"x": 40, "y": 60}}, {{"x": 48, "y": 60}}, {{"x": 48, "y": 0}}, {{"x": 12, "y": 0}}]}},
                "frame": {{"measured_to": "centre", "flange": 2, "wall": "1/8", "regular": {{"first": 1, "last": 47, "spacing": 23}}}},
                "stock": [{{"label": "ply", "length": 96, "width": 48, "thickness": "3/4"}}],
                "gap": 0, "saw": {{"kerf": "1/8", "face": "{face}"}}}}"#
        );
        plan(&crate::job::Job::from_json(&job).unwrap()).unwrap()
    }

    fn placed(plan: &Plan) -> (&Panel, &Placement) {
        let sheet = &plan.sheets.as_ref().unwrap().sheets[0];
        let placement = &sheet.placements[0];
        (plan.panels.iter().find(|panel| panel.label == placement.part).unwrap(), placement)
    }

    fn inches(x: i64, y: i64) -> geometry::Point {
        geometry::Point::new(Length::inches(x), Length::inches(y))
    }

    #[test]
    fn a_clipped_corner_and_a_notch_are_sawn_where_they_are_on_the_deck() {
        // Face up, the sheet is the deck seen from above: clip at the upper left, notch at the lower right.
        let sheet = sheet_mapping(Scale::one_to(1), Point::default());
        let on_paper = |face: &str, x, y| {
            let plan = lopsided(face);
            let (panel, placement) = placed(&plan);
            let at = inches(x, y);
            let point = mapping(panel, placement, plan.basis.face, &sheet).point(at.x, at.y);
            (point.x / 25_400, point.y / 25_400)
        };
        assert_eq!(on_paper("up", 0, 12), (12, 0));
        assert_eq!(on_paper("up", 12, 0), (0, 12));
        assert_eq!(on_paper("up", 40, 60), (60, 40));
        // Face down, left and right are exchanged: turned over, it is the same board.
        assert_eq!(on_paper("down", 0, 12), (84, 0));
        assert_eq!(on_paper("down", 12, 0), (96, 12));
        assert_eq!(on_paper("down", 40, 60), (36, 40));
        let plan = lopsided("up");
        let notch = placed(&plan).0.shape.sides().iter().filter(|side| matches!(side.edge, Edge::Perimeter { .. }));
        assert_eq!(notch.count(), 9);
    }

    #[test]
    fn a_board_that_is_turned_is_never_mirrored_and_fills_its_place() {
        let plan = lopsided("up");
        let (panel, placement) = placed(&plan);
        let sheet = sheet_mapping(Scale::one_to(1), Point::default());
        for (turned, face) in [(false, Face::Up), (true, Face::Up), (false, Face::Down), (true, Face::Down)] {
            let (length, width) = if turned { (panel.width, panel.length) } else { (panel.length, panel.width) };
            let mut place = placement.clone();
            (place.turned, place.length, place.width) = (turned, length, width);
            let mapping = mapping(panel, &place, face, &sheet);
            // Bow up as on the deck, x down and y to the right, turns against the clock; a board turned over turns with it.
            assert_eq!(mapping.keeps_clockwise(), face == Face::Down);
            let drawn = crate::draw::deck_shape::bounds(&mapping, &panel.bounds);
            assert_eq!((drawn.left, drawn.top), (0, 0));
            assert_eq!((drawn.width(), drawn.height()), (sheet.length(length), sheet.length(width)));
        }
        assert_eq!((bow(false, Face::Up), port(false, Face::Up)), (Toward::Up, Toward::Left));
        assert_eq!((bow(true, Face::Up), port(true, Face::Up)), (Toward::Left, Toward::Down));
        assert_eq!((bow(false, Face::Down), port(false, Face::Down)), (Toward::Up, Toward::Right));
        assert_eq!((bow(true, Face::Down), port(true, Face::Down)), (Toward::Right, Toward::Down));
    }
}
