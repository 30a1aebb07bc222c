//! Finds what cannot be read: words on words, lines through words, words off the sheet.

use super::{Figure, Line, Micrometres, Path, Point, Rect, Shape, Text, Tone};

/// Something on a sheet that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Clash {
    /// Two texts share room.
    Words(String, String),
    /// A line runs through a text. A text with a white patch may lie on fine, hidden and centre lines.
    Line(String, Line),
    /// A text lies on grey too dark to read it on, or half on black.
    Tone(String, Tone),
    /// A text leaves the sheet.
    OffSheet(String),
}

/// Touching is not overlapping: bounds are drawn in by this much on each side before they are compared.
const SLACK: Micrometres = 100;

pub(super) fn clashes(figure: &Figure) -> Vec<Clash> {
    let sheet = Rect::new(0, 0, figure.width, figure.height);
    let written: Vec<(&Text, Rect)> = figure
        .texts
        .iter()
        .filter(|text| !text.words.is_empty())
        .map(|text| (text, text.bounds().inset(SLACK)))
        .collect();
    let mut found = Vec::new();
    for (index, &(text, bounds)) in written.iter().enumerate() {
        if !sheet.holds(bounds) {
            found.push(Clash::OffSheet(text.words.clone()));
        }
        let before = written.iter().take(index).filter(|(_, place)| place.overlaps(bounds));
        found.extend(before.map(|(other, _)| Clash::Words(other.words.clone(), text.words.clone())));
    }
    for (index, shape) in figure.shapes.iter().enumerate() {
        let above = figure.shapes.get(index + 1..).unwrap_or_default();
        clashes_with(shape, above, &written, &mut found);
    }
    found
}

/// What one shape spoils, unless white paper that was laid over it covers it behind the words.
fn clashes_with(shape: &Shape, above: &[Shape], written: &[(&Text, Rect)], found: &mut Vec<Clash>) {
    match shape {
        Shape::Stroke(path, line) => {
            let Some(reach) = path.reach() else { return };
            let chords = path.chords();
            let near = written.iter().filter(|(_, bounds)| bounds.overlaps(reach.inset(-1)));
            for &(text, bounds) in near.filter(|(text, _)| !text.masked || line.is_heavy()) {
                if chords.iter().any(|&(a, b)| runs_through(a, b, bounds)) && !covered(above, bounds) {
                    found.push(Clash::Line(text.words.clone(), *line));
                }
            }
        }
        Shape::Fill(path, tone) if *tone >= Tone::Middle => {
            for &(text, bounds) in written.iter().filter(|(text, _)| !text.masked) {
                if darkens(path, bounds) && !covered(above, bounds) {
                    found.push(Clash::Tone(text.words.clone(), *tone));
                }
            }
        }
        Shape::Fill(..) => {}
    }
}

fn covered(above: &[Shape], bounds: Rect) -> bool {
    above.iter().any(|shape| match shape {
        Shape::Fill(path, Tone::White) => path.bounds().is_some_and(|area| area.holds(bounds)),
        _ => false,
    })
}

fn darkens(path: &Path, bounds: Rect) -> bool {
    path.reach().is_some_and(|area| area.overlaps(bounds))
}

/// True where a straight line has a point inside the rectangle.
///
/// # Method
/// Clipping of the parameter interval against the four edges (Liang and Barsky, 1984), in whole numbers: the fractions are
/// compared by cross-multiplication.
pub(super) fn runs_through(a: Point, b: Point, rect: Rect) -> bool {
    if !Rect::spanning(a, b).inset(-1).overlaps(rect) {
        return false;
    }
    let (dx, dy) = (i128::from(b.x - a.x), i128::from(b.y - a.y));
    let sides = [
        (-dx, i128::from(a.x - rect.left)),
        (dx, i128::from(rect.right - a.x)),
        (-dy, i128::from(a.y - rect.top)),
        (dy, i128::from(rect.bottom - a.y)),
    ];
    // The interval of the parameter that is inside so far, as fractions with positive denominators.
    let (mut enter, mut leave) = ((0_i128, 1_i128), (1_i128, 1_i128));
    for (rate, room) in sides {
        match rate.signum() {
            0 if room <= 0 => return false,
            0 => {}
            1 => {
                if room * leave.1 < leave.0 * rate {
                    leave = (room, rate);
                }
            }
            _ => {
                if -room * enter.1 > enter.0 * -rate {
                    enter = (-room, -rate);
                }
            }
        }
    }
    enter.0 * leave.1 < leave.0 * enter.1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::{Paper, Text, TextSize};

    fn sheet_with(texts: &[(&str, i64, i64)]) -> Figure {
        let mut figure = Figure::new("test", Paper::A4);
        for &(words, x, y) in texts {
            figure.text(Text::new(words, Point::new(x, y), TextSize::BODY));
        }
        figure
    }

    #[test]
    fn words_on_words_are_found() {
        let figure = sheet_with(&[("one", 20_000, 20_000), ("two", 22_000, 21_000), ("three", 20_000, 30_000)]);
        assert_eq!(figure.overlaps(), [Clash::Words("one".into(), "two".into())]);
    }

    #[test]
    fn words_off_the_sheet_are_found() {
        assert_eq!(sheet_with(&[("off", 208_000, 20_000)]).overlaps(), [Clash::OffSheet("off".into())]);
    }

    #[test]
    fn a_line_through_words_is_found_unless_it_is_fine_and_the_text_has_a_patch() {
        let mut figure = sheet_with(&[("word", 20_000, 20_000)]);
        figure.line(Point::new(10_000, 19_000), Point::new(40_000, 19_500), Line::Fine);
        figure.line(Point::new(10_000, 25_000), Point::new(40_000, 25_000), Line::Outline);
        assert_eq!(figure.overlaps(), [Clash::Line("word".into(), Line::Fine)]);
        figure.texts[0].masked = true;
        assert!(figure.overlaps().is_empty());
        figure.line(Point::new(24_000, 10_000), Point::new(24_000, 30_000), Line::Outline);
        assert_eq!(figure.overlaps(), [Clash::Line("word".into(), Line::Outline)]);
    }

    #[test]
    fn a_slanted_line_past_a_corner_is_no_clash() {
        let rect = Rect::new(0, 0, 100, 100);
        assert!(!runs_through(Point::new(-50, 40), Point::new(40, -50), rect));
        assert!(runs_through(Point::new(-50, 60), Point::new(60, -50), rect));
        assert!(!runs_through(Point::new(100, 0), Point::new(100, 100), rect));
        assert!(runs_through(Point::new(50, 50), Point::new(60, 60), rect));
    }
}
