//! The points of a survey and the readings between them, with the bow up; what was left out stands out.

use crate::draw::bow_up;
use crate::draw::figure::{
    Figure, Line, MILLIMETRE, Mapping, Micrometres, Path, Point, Rect, Text, TextSize, Tone, width,
};
use crate::length::{Length, Unit};
use crate::survey::{Survey, SurveyPoint, SurveyReading};

/// Radius of a point's dot.
const DOT: Micrometres = 900;
/// Room around the picture for names.
const RIM: Micrometres = 12 * MILLIMETRE;
/// Where along its line a reading's number may stand, in hundredths, the best first.
const ALONG: [i64; 9] = [50, 40, 60, 33, 67, 27, 73, 20, 80];

/// Draws points and readings; the answer is the mapping, and where the picture ends.
pub(super) fn draw(figure: &mut Figure, survey: &Survey, room: Rect, unit: Unit) -> (Mapping, Micrometres) {
    let mapping = mapping(survey, room, unit);
    // Lines first, so that words find their places beside them.
    for reading in &survey.readings {
        if let Some((from, to)) = ends(survey, reading) {
            let line = if reading.used { Line::Fine } else { Line::Cut };
            figure.line(place(&mapping, from), place(&mapping, to), line);
        }
    }
    for point in &survey.points {
        figure.fill(Path::circle(place(&mapping, point), DOT), Tone::Black);
    }
    let bounds = shape(survey);
    let below = mapping.point(bounds[1], Length::ZERO).y + RIM;
    for point in &survey.points {
        name(figure, &mapping, point, bounds, room);
    }
    for reading in &survey.readings {
        if let Some((from, to)) = ends(survey, reading) {
            number(figure, reading, place(&mapping, from), place(&mapping, to));
        }
    }
    (mapping, below)
}

fn place(mapping: &Mapping, point: &SurveyPoint) -> Point {
    mapping.point(point.x, point.y)
}

/// The least and the greatest of x, and of y.
fn shape(survey: &Survey) -> [Length; 4] {
    let of = |pick: fn(&SurveyPoint) -> Length| {
        let all = survey.points.iter().map(pick);
        (all.clone().min().unwrap_or_default(), all.max().unwrap_or_default())
    };
    let ((fore, aft), (port, starboard)) = (of(|point| point.x), of(|point| point.y));
    [fore, aft, port, starboard]
}

fn mapping(survey: &Survey, room: Rect, unit: Unit) -> Mapping {
    let [fore, aft, port, starboard] = shape(survey);
    let (fitted, _) = bow_up::fitted(room.inset(RIM), (starboard - port, aft - fore), unit);
    Mapping { origin: fitted.point(-fore, -port), ..fitted }
}

/// The two points of a distance.
fn ends<'a>(survey: &'a Survey, reading: &SurveyReading) -> Option<(&'a SurveyPoint, &'a SurveyPoint)> {
    match reading.points.as_slice() {
        [from, to] => survey.point(from).zip(survey.point(to)),
        _ => None,
    }
}

/// The name beside its point, outward where the point lies at a side.
fn name(figure: &mut Figure, mapping: &Mapping, point: &SurveyPoint, [_, _, port, starboard]: [Length; 4], room: Rect) {
    let size = TextSize::FIGURE;
    let (wide, high) = (width(&point.name, size, true), size.height());
    let at = place(mapping, point);
    let to_port = point.y - port <= (starboard - port) / 2;
    let (left, right) = (-DOT - wide - MILLIMETRE, DOT + MILLIMETRE);
    let sides = if to_port { [left, right] } else { [right, left] };
    let spots = sides.into_iter().flat_map(|x| [-high / 2, -high - DOT, DOT].map(|y| (x, y)));
    let rect = |(x, y): (Micrometres, Micrometres)| {
        let corner = at.moved(x, y);
        Rect::new(corner.x, corner.y, corner.x + wide, corner.y + high)
    };
    let free = spots.map(rect).find(|spot| figure.has_no_words(*spot) && room.holds(*spot));
    if let Some(spot) = free {
        figure.text(Text::centred(&point.name, spot.centre(), size).bold(true).masked());
    }
}

/// The reading's number on its line.
fn number(figure: &mut Figure, reading: &SurveyReading, from: Point, to: Point) {
    let size = TextSize::LEAST;
    let (wide, high) = (width(&reading.name, size, !reading.used), size.height());
    for part in ALONG {
        let middle = from.moved((to.x - from.x) * part / 100, (to.y - from.y) * part / 100);
        let half = (wide / 2 + 300, high / 2 + 100);
        let spot = Rect::new(middle.x - half.0, middle.y - half.1, middle.x + half.0, middle.y + half.1);
        if figure.has_no_words(spot) {
            figure.text(Text::centred(&reading.name, middle, size).bold(!reading.used).masked());
            return;
        }
    }
}
