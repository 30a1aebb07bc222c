//! What a reading says of the places of points, and how that changes when they move.

/// A place or a way, in millimetres: aft and to starboard.
pub(super) type Place = [f64; 2];

pub(super) fn minus(a: Place, b: Place) -> Place {
    [a[0] - b[0], a[1] - b[1]]
}

pub(super) fn plus(a: Place, b: Place) -> Place {
    [a[0] + b[0], a[1] + b[1]]
}

pub(super) fn times(a: Place, by: f64) -> Place {
    [a[0] * by, a[1] * by]
}

pub(super) fn dot(a: Place, b: Place) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

/// Without the library's `hypot`, whose last digit differs between machines.
pub(super) fn size(a: Place) -> f64 {
    dot(a, a).sqrt()
}

/// The way of length one in the same direction; none where the two are one place.
pub(super) fn unit(a: Place) -> Option<Place> {
    let length = size(a);
    (length > 1e-9).then(|| times(a, 1.0 / length))
}

/// A quarter turn from aft to starboard.
pub(super) fn turned(a: Place) -> Place {
    [-a[1], a[0]]
}

/// What is measured, between points by their numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Form {
    /// Between two points.
    Distance(usize, usize),
    /// Of a point along the line from one to another.
    Station { of: usize, from: usize, to: usize },
    /// Of a point square to that line, to starboard or aft of it.
    Offset { of: usize, from: usize, to: usize },
    /// How far the end of the second leg lies out of square.
    Square { at: usize, along: usize, leg: usize },
}

/// A reading as an equation: `form` of the points' places is `value`, within `sigma`.
#[derive(Debug, Clone)]
pub(super) struct Equation {
    pub(super) form: Form,
    pub(super) value: f64,
    pub(super) sigma: f64,
    /// Which of the readings it comes from.
    pub(super) reading: usize,
    /// What people call it.
    pub(super) name: String,
    /// False for what is trusted and not read off a tape.
    pub(super) is_read: bool,
}

/// What the places make of an equation, and how that changes with each point.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub(super) value: f64,
    pub(super) slopes: Vec<(usize, Place)>,
}

impl Form {
    /// The points that it names.
    pub(super) fn points(self) -> Vec<usize> {
        match self {
            Form::Distance(a, b) => vec![a, b],
            Form::Station { of, from, to } | Form::Offset { of, from, to } => vec![of, from, to],
            Form::Square { at, along, leg } => vec![leg, at, along],
        }
    }

    /// Its value and slopes at the given places; none where a line has no direction.
    pub(super) fn row(self, places: &[Place]) -> Option<Row> {
        let place = |point: usize| places.get(point).copied().unwrap_or_default();
        match self {
            Form::Distance(a, b) => {
                let way = minus(place(b), place(a));
                let u = unit(way)?;
                Some(Row { value: size(way), slopes: vec![(a, times(u, -1.0)), (b, u)] })
            }
            Form::Station { of, from, to } => {
                let line = Line::new(place(from), place(to), place(of))?;
                Some(Line::row([of, from, to], line.station, line.u, times(line.n, line.offset / line.length)))
            }
            Form::Square { at, along, leg } => {
                let line = Line::new(place(at), place(along), place(leg))?;
                Some(Line::row([leg, at, along], line.station, line.u, times(line.n, line.offset / line.length)))
            }
            Form::Offset { of, from, to } => {
                let line = Line::new(place(from), place(to), place(of))?;
                let way = sense(line.u);
                let slope = times(line.n, -way * line.station / line.length);
                Some(Line::row([of, from, to], way * line.offset, times(line.n, way), slope))
            }
        }
    }
}

/// Offsets count to starboard of a line that runs fore and aft, whichever way it is named, and aft of one athwart.
pub(super) fn sense(u: Place) -> f64 {
    let [x, y] = turned(u);
    if x + y >= 0.0 { 1.0 } else { -1.0 }
}

/// A baseline, and where a point lies to it.
struct Line {
    u: Place,
    n: Place,
    length: f64,
    station: f64,
    offset: f64,
}

impl Line {
    fn new(from: Place, to: Place, of: Place) -> Option<Line> {
        let (way, u) = (minus(to, from), unit(minus(to, from))?);
        let (n, aside) = (turned(u), minus(of, from));
        Some(Line { u, n, length: size(way), station: dot(aside, u), offset: dot(aside, n) })
    }

    /// A value of the point with its slope there and at the line's end; the slopes sum to zero, as moving everything at
    /// once changes nothing.
    fn row([of, from, to]: [usize; 3], value: f64, at_point: Place, at_end: Place) -> Row {
        let at_start = times(plus(at_point, at_end), -1.0);
        Row { value, slopes: vec![(of, at_point), (from, at_start), (to, at_end)] }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slopes_are_what_a_small_move_does() {
        let places = [[10.0, 20.0], [310.0, 60.0], [140.0, 200.0]];
        let forms = [
            Form::Distance(0, 2),
            Form::Station { of: 2, from: 0, to: 1 },
            Form::Offset { of: 2, from: 0, to: 1 },
            Form::Offset { of: 2, from: 1, to: 0 },
            Form::Square { at: 0, along: 1, leg: 2 },
        ];
        for form in forms {
            let row = form.row(&places).unwrap();
            for (point, slope) in row.slopes {
                for (axis, expected) in slope.into_iter().enumerate() {
                    let moved = |by: f64| {
                        let mut places = places;
                        places[point][axis] += by;
                        form.row(&places).unwrap().value
                    };
                    let numeric = (moved(1e-4) - moved(-1e-4)) / 2e-4;
                    assert!((numeric - expected).abs() < 1e-7, "{form:?}, point {point}: {numeric} {slope:?}");
                }
            }
        }
    }

    #[test]
    fn an_offset_counts_to_starboard_whichever_way_the_line_is_named() {
        let places = [[0.0, 0.0], [300.0, 0.0], [100.0, 40.0]];
        let of = |from, to| Form::Offset { of: 2, from, to }.row(&places).unwrap().value;
        assert_eq!((of(0, 1), of(1, 0)), (40.0, 40.0));
        let athwart = [[0.0, 0.0], [0.0, 100.0], [30.0, 50.0]];
        let of = |from, to| Form::Offset { of: 2, from, to }.row(&athwart).unwrap().value;
        assert_eq!((of(0, 1), of(1, 0)), (30.0, 30.0));
    }
}
