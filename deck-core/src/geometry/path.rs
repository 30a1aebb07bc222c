//! A closed path and what can be asked of it.

use super::{Arc, Point, Turn};
use crate::length::Length;
use crate::math::round_half_even;
use serde::{Deserialize, Serialize};

/// One side of a path: from its own corner to the next side's, straight or along an arc, with a mark of what it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Side<T> {
    /// The corner where the side starts.
    #[serde(flatten)]
    pub from: Point,
    /// The arc along which it runs; none: straight.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub arc: Option<Arc>,
    /// What the side is.
    pub edge: T,
}

/// A closed path, its inside on the left of the walk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Path<T> {
    sides: Vec<Side<T>>,
}

/// The least rectangle around a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Bounds {
    /// Foremost station.
    pub fore: Length,
    /// Aftmost station.
    pub aft: Length,
    /// Least distance from the port edge.
    pub port: Length,
    /// Greatest distance from the port edge.
    pub starboard: Length,
}

impl Bounds {
    /// The rectangle of one point.
    fn at(point: Point) -> Bounds {
        Bounds { fore: point.x, aft: point.x, port: point.y, starboard: point.y }
    }

    /// The least rectangle around two.
    fn with(self, other: Bounds) -> Bounds {
        Bounds {
            fore: self.fore.min(other.fore),
            aft: self.aft.max(other.aft),
            port: self.port.min(other.port),
            starboard: self.starboard.max(other.starboard),
        }
    }

    /// Extent fore and aft.
    pub fn depth(&self) -> Length {
        self.aft - self.fore
    }

    /// Extent athwart.
    pub fn breadth(&self) -> Length {
        self.starboard - self.port
    }
}

/// From which side a station is approached, where an edge of the path lies right on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limit {
    /// What lies just forward of the station.
    Fore,
    /// What lies just aft of it.
    Aft,
}

/// A stretch of a side along which `x` only grows or only falls.
struct Monotone {
    from: Point,
    to: Point,
    arc: Option<Arc>,
}

impl Monotone {
    /// The one or two stretches of a side: an arc of up to a half turn turns back in `x` once at most.
    fn of<T>(side: &Side<T>, to: Point) -> impl Iterator<Item = Monotone> {
        let turning = side.arc.and_then(|arc| arc.extreme(side.from, to));
        let first = Monotone { from: side.from, to: turning.unwrap_or(to), arc: side.arc };
        std::iter::once(first).chain(turning.map(|point| Monotone { from: point, to, arc: side.arc }))
    }

    /// The stretch's points on a station, its start left out.
    fn crossing(&self, x: Length) -> Option<Point> {
        let (low, high) = (self.from.x.min(self.to.x), self.from.x.max(self.to.x));
        (low < x && x < high || x == self.to.x && low < high).then(|| Point::new(x, self.y_at(x)))
    }

    fn y_at(&self, x: Length) -> Length {
        if x == self.from.x {
            return self.from.y;
        }
        if x == self.to.x {
            return self.to.y;
        }
        match self.arc {
            None => {
                let (run, rise) = (self.to.x - self.from.x, self.to.y - self.from.y);
                let along = i128::from((x - self.from.x).nanometres()) * i128::from(rise.nanometres());
                let run = i128::from(run.nanometres());
                self.from.y + Length::saturating(round_half_even(along * run.signum(), run.abs()))
            }
            // A left turn runs aft on the port half of its circle and forward on the starboard half.
            Some(arc) => arc.y_at(x, (arc.turn == Turn::Left) == (self.to.x < self.from.x)),
        }
    }
}

impl<T: Copy> Path<T> {
    /// A path through the given sides, turned so that its inside is on the left.
    pub fn new(sides: Vec<Side<T>>) -> Path<T> {
        let path = Path { sides };
        if path.doubled_area() < 0 { path.reversed() } else { path }
    }

    /// A path that keeps the direction in which it is given.
    pub(super) fn as_walked(sides: Vec<Side<T>>) -> Path<T> {
        Path { sides }
    }

    /// The sides in order.
    pub fn sides(&self) -> &[Side<T>] {
        &self.sides
    }

    /// Each side with the corner where it ends.
    pub fn walk(&self) -> impl Iterator<Item = (&Side<T>, Point)> {
        let ends = self.sides.iter().skip(1).chain(self.sides.first()).map(|side| side.from);
        self.sides.iter().zip(ends)
    }

    /// The same path with other marks on its sides.
    pub fn map<U: Copy>(&self, mark: impl Fn(&T) -> U) -> Path<U> {
        Path {
            sides: self
                .sides
                .iter()
                .map(|side| Side { from: side.from, arc: side.arc, edge: mark(&side.edge) })
                .collect(),
        }
    }

    pub(super) fn reversed(&self) -> Path<T> {
        let mut sides: Vec<Side<T>> = self
            .walk()
            .map(|(side, to)| Side {
                from: to,
                arc: side.arc.map(|arc| Arc { turn: opposite(arc.turn), ..arc }),
                edge: side.edge,
            })
            .collect();
        sides.reverse();
        Path { sides }
    }

    /// The path moved by a distance aft and to starboard.
    #[must_use]
    pub fn moved(&self, aft: Length, starboard: Length) -> Path<T> {
        let shift = |point: Point| Point::new(point.x + aft, point.y + starboard);
        let sides = self.sides.iter().map(|side| Side {
            from: shift(side.from),
            arc: side.arc.map(|arc| Arc { centre: shift(arc.centre), ..arc }),
            edge: side.edge,
        });
        Path { sides: sides.collect() }
    }

    /// The path mirrored, with stations and distances from port in each other's place: what is cut across is then cut along.
    #[must_use]
    pub fn transposed(&self) -> Path<T> {
        let swap = |point: Point| Point::new(point.y, point.x);
        let sides = self.sides.iter().map(|side| Side {
            from: swap(side.from),
            arc: side.arc.map(|arc| Arc { centre: swap(arc.centre), turn: opposite(arc.turn), ..arc }),
            edge: side.edge,
        });
        Path { sides: sides.collect() }.reversed()
    }

    /// Twice the area in square nanometres, above zero with the inside on the left. Arcs are counted as arcs: their
    /// part is rounded from floating point, the rest is exact.
    pub fn doubled_area(&self) -> i128 {
        let mut doubled = 0;
        let mut arcs = 0.0;
        for (side, to) in self.walk() {
            let (ax, ay) = (i128::from(side.from.x.nanometres()), i128::from(side.from.y.nanometres()));
            let (bx, by) = (i128::from(to.x.nanometres()), i128::from(to.y.nanometres()));
            doubled += ax * by - bx * ay;
            if let Some(arc) = &side.arc {
                let segment = 2.0 * arc.segment(side.from, to);
                arcs += if arc.turn == Turn::Left { segment } else { -segment };
            }
        }
        // Below 2·10²⁴ for lengths within the limit: exact in i128.
        #[allow(clippy::cast_possible_truncation)]
        let arcs = arcs.round() as i128;
        doubled + arcs
    }

    /// The area in square nanometres.
    pub fn area(&self) -> i128 {
        (self.doubled_area() + 1).div_euclid(2)
    }

    /// Length of all sides together, arcs along the arc, to the nearest nanometre of each.
    pub fn perimeter(&self) -> Length {
        self.walk()
            .map(|(side, to)| match &side.arc {
                None => side.from.distance(to),
                Some(arc) => Length::nearest(arc.radius.nanometres() as f64 * arc.sweep(side.from, to)),
            })
            .sum()
    }

    /// The least rectangle around the path, arcs counted as arcs. All zero for a path without sides.
    pub fn bounds(&self) -> Bounds {
        self.side_bounds().reduce(Bounds::with).unwrap_or_default()
    }

    /// The least rectangle around each side.
    pub(super) fn side_bounds(&self) -> impl Iterator<Item = Bounds> {
        self.walk().map(|(side, to)| {
            let extremes = side.arc.iter().flat_map(|arc| arc.extremes(side.from, to));
            extremes.chain([to]).fold(Bounds::at(side.from), |bounds, point| bounds.with(Bounds::at(point)))
        })
    }

    /// The stretches of `y` inside the path at a station, from port to starboard.
    pub fn breadths(&self, x: Length, limit: Limit) -> Vec<(Length, Length)> {
        let mut crossings: Vec<Length> = self
            .monotones()
            .filter(|stretch| {
                let (low, high) = (stretch.from.x.min(stretch.to.x), stretch.from.x.max(stretch.to.x));
                match limit {
                    Limit::Fore => low < x && x <= high,
                    Limit::Aft => low <= x && x < high,
                }
            })
            .map(|stretch| stretch.y_at(x))
            .collect();
        crossings.sort_unstable();
        crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])).filter(|(port, starboard)| port < starboard).collect()
    }

    fn monotones(&self) -> impl Iterator<Item = Monotone> {
        self.walk().flat_map(|(side, to)| Monotone::of(side, to))
    }

    /// The corners, with arcs replaced by chords that lie within `tolerance` of them.
    pub fn flatten(&self, tolerance: Length) -> Vec<Point> {
        let mut points = Vec::new();
        for (side, to) in self.walk() {
            points.push(side.from);
            if let Some(arc) = &side.arc {
                points.extend(arc.flatten(side.from, to, tolerance));
            }
        }
        points
    }
}

impl Path<()> {
    /// A circle, as two half turns.
    pub fn circle(centre: Point, radius: Length) -> Path<()> {
        let arc = Some(Arc { centre, radius, turn: Turn::Left });
        let ends = [centre.x - radius, centre.x + radius];
        Path { sides: ends.map(|x| Side { from: Point::new(x, centre.y), arc, edge: () }).to_vec() }
    }

    /// A rectangle between two corners, its own corners rounded by a radius that is not above half of either side.
    pub fn rectangle(fore_port: Point, aft_starboard: Point, radius: Length) -> Path<()> {
        let (a, b, r) = (fore_port, aft_starboard, radius);
        let centres = [(a.x + r, a.y + r), (b.x - r, a.y + r), (b.x - r, b.y - r), (a.x + r, b.y - r)];
        let ends = [
            [(a.x, a.y + r), (a.x + r, a.y)],
            [(b.x - r, a.y), (b.x, a.y + r)],
            [(b.x, b.y - r), (b.x - r, b.y)],
            [(a.x + r, b.y), (a.x, b.y - r)],
        ];
        let mut sides = Vec::new();
        for (centre, [start, end]) in centres.into_iter().zip(ends) {
            if !r.is_zero() {
                let centre = Point::new(centre.0, centre.1);
                let arc = Some(Arc { centre, radius: r, turn: Turn::Left });
                sides.push(Side { from: Point::new(start.0, start.1), arc, edge: () });
            }
            sides.push(Side { from: Point::new(end.0, end.1), arc: None, edge: () });
        }
        Path { sides }.without_empty_sides()
    }
}

impl<T: Copy> Side<T> {
    /// The side in pieces, cut where it crosses or touches a station.
    pub(super) fn split_at(&self, to: Point, x: Length) -> Vec<Side<T>> {
        let cuts = Monotone::of(self, to).filter_map(|stretch| stretch.crossing(x)).filter(|&point| point != to);
        std::iter::once(self.from).chain(cuts).map(|from| Side { from, ..*self }).collect()
    }
}

impl<T: Copy> Path<T> {
    /// Drops straight sides of no length.
    pub(super) fn without_empty_sides(self) -> Path<T> {
        let keep: Vec<bool> = self.walk().map(|(side, to)| side.from != to).collect();
        let sides = self.sides.into_iter().zip(keep).filter_map(|(side, keep)| keep.then_some(side)).collect();
        Path { sides }
    }
}

pub(super) fn opposite(turn: Turn) -> Turn {
    match turn {
        Turn::Left => Turn::Right,
        Turn::Right => Turn::Left,
    }
}
