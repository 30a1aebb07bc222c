//! The waste inside a panel, as rectangles that small parts can be sawn from.
//!
//! Between a panel and the rectangle that is nested for it lies waste: a motor notch, the corners of a bow, a taper; and
//! every opening is waste. The rectangles are found on the safe side: clear of the edge, whose arcs are hidden by steps.
//!
//! # Method
//! The largest rectangle among obstacles: every pair of obstacle edges bounds a strip, whose gaps are the rectangles that
//! reach from obstacle to obstacle (Naamad, Lee and Hsu 1984, "On the maximum empty rectangle problem", Discrete Applied
//! Mathematics 8, from memory). The largest that holds a wanted part is taken and becomes an obstacle, and so on.

use crate::geometry::{Bounds, Limit, Path};
use crate::length::{Area, Length};
use crate::nest::{Part, Rectangle};
use crate::panels::Panel;

/// Rectangles taken from one panel at most: a panel has two bow corners or a notch, and few openings. Each takes some
/// tenths of a millisecond to find.
const MOST: usize = 6;

/// An obstacle, or a rectangle clear of them: from and to along the panel's length, from and to along its width.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Cell {
    along: (Length, Length),
    across: (Length, Length),
}

/// Rectangles of waste in the panel, each of which holds one of the wanted parts once the saw has been round.
///
/// `part` is the panel's rectangle; `holds` is asked of what falls out of it.
pub(super) fn waste(panel: &Panel, part: &Part, kerf: Length, holds: impl Fn(&Rectangle) -> bool) -> Vec<Rectangle> {
    if panel.area >= Area::of(panel.length, panel.width) {
        return Vec::new();
    }
    let openings = panel.openings.iter().flat_map(|opening| opening.shape.cover());
    let mut obstacles: Vec<Cell> =
        panel.shape.cover().into_iter().chain(openings).map(|edge| cell(panel, edge)).collect();
    let mut found = Vec::new();
    while found.len() < MOST {
        obstacles.sort_by_key(|obstacle| obstacle.across);
        let Some(largest) = largest(panel, &obstacles, &|cell| holds(&part.fallen(&cell.rectangle(), kerf))) else {
            break;
        };
        found.push(largest.rectangle());
        obstacles.push(largest);
    }
    found
}

/// In the panel's own coordinates: its length runs athwart from port, its width aft.
fn cell(panel: &Panel, edge: Bounds) -> Cell {
    let (port, fore) = (panel.bounds.port, panel.bounds.fore);
    let within = |x: Length, most: Length| x.max(Length::ZERO).min(most);
    Cell {
        along: (within(edge.port - port, panel.length), within(edge.starboard - port, panel.length)),
        across: (within(edge.fore - fore, panel.width), within(edge.aft - fore, panel.width)),
    }
}

impl Cell {
    fn rectangle(self) -> Rectangle {
        let extent = |(from, to): (Length, Length)| to - from;
        Rectangle::new(self.along.0, self.across.0, extent(self.along), extent(self.across))
    }

    fn area(self) -> i128 {
        Area::of(self.along.1 - self.along.0, self.across.1 - self.across.0).square_nanometres()
    }
}

/// The largest rectangle of waste that will do. Obstacles are sorted by where they begin across.
fn largest(panel: &Panel, obstacles: &[Cell], will_do: &impl Fn(Cell) -> bool) -> Option<Cell> {
    let mut edges: Vec<Length> = obstacles.iter().flat_map(|cell| [cell.along.0, cell.along.1]).collect();
    edges.extend([Length::ZERO, panel.length]);
    edges.sort_unstable();
    edges.dedup();
    let mut best: Option<Cell> = None;
    for (index, &from) in edges.iter().enumerate() {
        for &to in edges.iter().skip(index + 1) {
            for gap in gaps((from, to), obstacles, panel.width) {
                let larger = best.is_none_or(|best| gap.area() > best.area());
                if larger && will_do(gap) && is_waste(panel, gap) {
                    best = Some(gap);
                }
            }
        }
    }
    best
}

/// What the obstacles leave of a strip.
fn gaps(along: (Length, Length), obstacles: &[Cell], whole: Length) -> Vec<Cell> {
    let mut free = Length::ZERO;
    let mut gaps = Vec::new();
    let in_the_way = obstacles.iter().filter(|cell| cell.along.0 < along.1 && cell.along.1 > along.0);
    for across in in_the_way.map(|cell| cell.across).chain([(whole, whole)]) {
        if across.0 > free {
            gaps.push(Cell { along, across: (free, across.0) });
        }
        free = free.max(across.1);
    }
    gaps
}

/// True for a rectangle clear of every edge that lies outside the panel or within an opening: its middle tells.
fn is_waste(panel: &Panel, cell: Cell) -> bool {
    let station = panel.bounds.fore + (cell.across.0 + cell.across.1) / 2;
    let y = panel.bounds.port + (cell.along.0 + cell.along.1) / 2;
    !holds(&panel.shape, station, y) || panel.openings.iter().any(|opening| holds(&opening.shape, station, y))
}

fn holds<T: Copy>(path: &Path<T>, station: Length, y: Length) -> bool {
    path.breadths(station, Limit::Aft).iter().any(|(port, starboard)| *port < y && y < *starboard)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Job;
    use crate::plan::{Plan, plan};

    fn planned(changes: &str) -> Plan {
        let job = format!(
            r#"{{"schema": 1, "name": "Waste", "unit": "in",
                "frame": {{"measured_to": "centre", "flange": 2, "wall": "1/8", "regular": {{"first": 1, "last": 47, "spacing": 23}}}},
                "stock": [{{"label": "ply", "length": 96, "width": 48, "thickness": "3/4"}}],
                "gap": 0, "saw": {{"kerf": "1/8"}}, {changes}}}"#
        );
        plan(&Job::from_json(&job).unwrap()).unwrap()
    }

    fn of_first(plan: &Plan) -> Vec<Rectangle> {
        let panel = &plan.panels[0];
        let part = Part::new(panel.label.clone(), panel.length, panel.width);
        let least = Length::inches(2);
        waste(panel, &part, "1/8 in".parse().unwrap(), |fallen| fallen.length >= least && fallen.width >= least)
    }

    fn inches(x: f64, y: f64, length: f64, width: f64) -> Rectangle {
        let [x, y, length, width] = [x, y, length, width].map(|inch| format!("{inch} in").parse::<Length>().unwrap());
        Rectangle::new(x, y, length, width)
    }

    #[test]
    fn a_square_notch_and_a_hatch_are_waste_as_they_are() {
        let notched =
            planned(r#""deck": {"length": 48, "beam": 96, "notch": {"width": 30, "depth": 20, "from_port": 20}}"#);
        assert_eq!(of_first(&notched), [inches(20.0, 28.0, 30.0, 20.0)]);
        let hatch = planned(
            r#""deck": {"length": 48, "beam": 96},
                "openings": [{"name": "hatch", "framed": true, "rectangle": {"x": 5, "y": 30, "depth": 14, "width": 40}}]"#,
        );
        assert_eq!(of_first(&hatch), [inches(30.0, 5.0, 40.0, 14.0)]);
    }

    #[test]
    fn the_largest_in_a_clipped_corner_has_half_its_legs() {
        let clipped = planned(r#""deck": {"length": 48, "beam": 96, "bow": {"clip": 12}}"#);
        let found = of_first(&clipped);
        // Less the nanometre that hides the rounding of the slanted side.
        let nanometre = Length::from_nanometres(1);
        let six = Length::inches(6) - nanometre;
        assert_eq!(found[0], Rectangle::new(Length::ZERO, Length::ZERO, six, six));
        assert_eq!(found[1].x, Length::inches(90) + nanometre);
    }

    #[test]
    fn beside_an_arc_no_corner_reaches_over_it() {
        let round = planned(r#""deck": {"length": 48, "beam": 96, "bow": {"radius": 20}}"#);
        let found = of_first(&round);
        // The square in the corner outside a quarter circle: r (1 − 1/√2) = 5.858.
        let side = found[0].length.nanometres() as f64 / 25.4e6;
        assert!((side - 5.857_864).abs() < 1e-4 && side < 5.857_865, "{side}");
        let hole = planned(
            r#""deck": {"length": 48, "beam": 96}, "openings": [{"name": "hole", "round": {"x": 12, "y": 40, "diameter": 14}}]"#,
        );
        let found = of_first(&hole)[0];
        let (half_length, half_width) =
            (found.length.nanometres() as f64 / 50.8e6, found.width.nanometres() as f64 / 50.8e6);
        assert!(half_length.hypot(half_width) <= 7.0 && half_length * half_width > 24.4);
    }

    #[test]
    fn small_parts_of_a_job_come_out_of_the_notch_and_are_not_bought() {
        let deck = r#""deck": {"length": 48, "beam": 96, "notch": {"width": 30, "depth": 20, "from_port": 20, "inside_radius": 2}}"#;
        let plan = planned(&format!(
            r#"{deck}, "extra_parts": [{{"label": "lid", "length": 16, "width": 12, "grain": "length"}}]"#
        ));
        let sheets = plan.sheets.as_ref().unwrap();
        assert_eq!((sheets.sheet_count, sheets.sheets.len(), sheets.proven), (1, 2, true));
        assert_eq!(sheets.sheets[1].placements[0].part, "lid");
        assert_eq!(plan.takeoff.as_ref().unwrap().lines[0].buy, 1);
    }
}
