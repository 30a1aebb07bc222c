//! The furniture that all sheets of a job share: what the sheet shows above, what it belongs to below.
//!
//! ```text
//!  Panel A                                         ^ bow
//!  two alike: 2, 3                                 |
//! ─────────────────────────────────────────────────────
//!                       body
//! ─────────────────────────────────────────────────────
//!  job        | scale 1:16  ▬▬▬ 3 ft | version | 4 of 9
//! ```

use crate::draw::figure::{
    Anchor, Figure, Line, MILLIMETRE, Micrometres, Paper, Path, Point, Rect, Scale, Text, TextSize, Tone, fit, width,
};
use crate::length::{Length, Notation, Unit};

/// White margin of a sheet: what common printers can reach, with a hand's thumb.
pub(super) const MARGIN: Micrometres = 11 * MILLIMETRE;
const HEAD: Micrometres = 17 * MILLIMETRE;
const FOOT: Micrometres = 11 * MILLIMETRE;
/// Space between furniture and body.
const SPACE: Micrometres = 3 * MILLIMETRE;
/// Room at the right of the head for the mark that shows where the bow is.
const MARK: Micrometres = 30 * MILLIMETRE;

/// What the furniture of a sheet says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetFrame {
    /// The job.
    pub job: String,
    /// What the sheet shows.
    pub title: String,
    /// A line under the title.
    pub note: String,
    /// Scale of the drawing, and the unit of its check bar.
    pub scale: Option<(Scale, Unit)>,
    /// Where the bow is; `None` on sheets where that has no meaning.
    pub bow: Option<Bow>,
}

/// Where the bow lies on a drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bow {
    /// Up, with port to the left: seen from above.
    Up,
    /// To the left, with starboard up: seen from above.
    Left,
}

/// The part of a sheet that is left for its subject.
pub fn body(paper: Paper) -> Rect {
    let (rest, _) = paper.area().inset(MARGIN).cut_top(HEAD + SPACE);
    rest.cut_bottom(FOOT + SPACE).0
}

impl SheetFrame {
    /// Furniture without a scale and without a bow.
    pub fn new(job: impl Into<String>, title: impl Into<String>) -> SheetFrame {
        SheetFrame { job: job.into(), title: title.into(), note: String::new(), scale: None, bow: None }
    }

    /// With a line under the title.
    #[must_use]
    pub fn note(mut self, note: impl Into<String>) -> SheetFrame {
        self.note = note.into();
        self
    }

    /// With a scale and a check bar.
    #[must_use]
    pub fn scale(mut self, scale: Scale, unit: Unit) -> SheetFrame {
        self.scale = Some((scale, unit));
        self
    }

    /// With a mark that shows where the bow is.
    #[must_use]
    pub fn bow(mut self, bow: Bow) -> SheetFrame {
        self.bow = Some(bow);
        self
    }

    /// Draws the furniture of sheet `number` of `of`.
    pub fn draw(&self, figure: &mut Figure, number: usize, of: usize) {
        let page = Rect::new(0, 0, figure.width, figure.height).inset(MARGIN);
        let (_, head) = page.cut_top(HEAD);
        let (_, foot) = page.cut_bottom(FOOT);
        self.draw_head(figure, head);
        self.draw_foot(figure, foot, number, of);
    }

    fn draw_head(&self, figure: &mut Figure, head: Rect) {
        let room = head.width() - if self.bow.is_some() { MARK } else { 0 };
        let (title, size) = fit(&self.title, TextSize::TITLE, true, room);
        figure.text(Text::new(title, Point::new(head.left, head.top + 4 * MILLIMETRE), size).bold(true).level());
        let (note, size) = fit(&self.note, TextSize::FIGURE, false, room);
        figure.text(Text::new(note, Point::new(head.left, head.top + 12 * MILLIMETRE), size).level());
        figure.line(Point::new(head.left, head.bottom), head.bottom_right(), Line::Outline);
        if let Some(bow) = self.bow {
            draw_bow(figure, bow, head.cut_right(MARK).1);
        }
    }

    fn draw_foot(&self, figure: &mut Figure, foot: Rect, number: usize, of: usize) {
        figure.line(foot.top_left(), Point::new(foot.right, foot.top), Line::Outline);
        let level = foot.centre().y;
        let sheet = format!("sheet {number} of {of}");
        let version = concat!("deck-core ", env!("CARGO_PKG_VERSION"));
        let mut right = foot.right;
        for (words, bold) in [(sheet.as_str(), true), (version, false)] {
            let text = Text::new(words, Point::new(right, level), TextSize::BODY);
            right -= width(words, TextSize::BODY, bold) + 4 * MILLIMETRE;
            figure.text(text.bold(bold).anchor(Anchor::End).level());
        }
        if let Some((scale, unit)) = self.scale {
            right = draw_scale(figure, scale, unit, Point::new(right, level));
        }
        let (job, size) = fit(&self.job, TextSize::FIGURE, true, right - foot.left);
        figure.text(Text::new(job, Point::new(foot.left, level), size).bold(true).level());
    }
}

/// An arrow to the bow with the sides of the boat named beside it.
fn draw_bow(figure: &mut Figure, bow: Bow, room: Rect) {
    let middle = room.centre();
    let half = 5 * MILLIMETRE;
    let word = |words: &str, x, y| Text::centred(words, Point::new(x, y), TextSize::LEAST).bold(true);
    match bow {
        Bow::Up => {
            figure.arrow(middle.moved(0, half + MILLIMETRE), middle.moved(0, 1500 - half), Line::Thin);
            figure.text(word("BOW", middle.x, room.top + MILLIMETRE));
            figure.text(word("PORT", middle.x - 8 * MILLIMETRE, middle.y));
            figure.text(word("STBD", middle.x + 8 * MILLIMETRE, middle.y));
        }
        Bow::Left => {
            figure.arrow(middle.moved(half, 0), middle.moved(-half, 0), Line::Thin);
            figure.text(word("BOW", middle.x - 10 * MILLIMETRE, middle.y));
            figure.text(word("STARBOARD", middle.x, middle.y - 5 * MILLIMETRE));
            figure.text(word("PORT", middle.x, middle.y + 5 * MILLIMETRE));
        }
    }
}

/// The scale with its check bar, ending at `right_end`; the answer is where the room to its left ends.
fn draw_scale(figure: &mut Figure, scale: Scale, unit: Unit, right_end: Point) -> Micrometres {
    let bar = bar_length(scale, unit);
    let extent = scale.on_paper(bar);
    let tell = format!("{} = {} on paper", bar_words(bar, unit), paper_words(bar, scale, unit));
    let words = Text::new(tell, right_end, TextSize::LEAST).anchor(Anchor::End).level();
    let bar_right = right_end.x - words.width() - 2 * MILLIMETRE;
    let bar_left = bar_right - extent;
    draw_bar(figure, Rect::new(bar_left, right_end.y - 600, bar_right, right_end.y + 600));
    figure.text(words);
    let name = Text::new(format!("scale {scale}"), Point::new(bar_left - 2 * MILLIMETRE, right_end.y), TextSize::BODY);
    let left = name.at.x - name.width() - 4 * MILLIMETRE;
    figure.text(name.anchor(Anchor::End).level());
    left
}

fn draw_bar(figure: &mut Figure, bar: Rect) {
    const FIELDS: i64 = 4;
    for field in (0..FIELDS).step_by(2) {
        let at = |field: i64| bar.left + bar.width() * field / FIELDS;
        figure.fill(Path::rect(Rect { left: at(field), right: at(field + 1), ..bar }), Tone::Black);
    }
    figure.stroke(Path::rect(bar), Line::Fine);
}

/// The longest round length whose bar is no longer than 40 mm.
fn bar_length(scale: Scale, unit: Unit) -> Length {
    const LONGEST: Micrometres = 40 * MILLIMETRE;
    const INCHES: [i64; 15] = [1, 2, 3, 4, 6, 8, 12, 24, 36, 48, 60, 72, 96, 120, 240];
    const MILLIMETRES: [i64; 10] = [20, 40, 100, 200, 400, 500, 1000, 2000, 4000, 10_000];
    let (unit, counts): (Unit, &[i64]) =
        if unit.is_imperial() { (Unit::Inch, &INCHES) } else { (Unit::Millimetre, &MILLIMETRES) };
    let lengths = || counts.iter().map(|&count| Length::of(count, unit));
    let fitting = lengths().rfind(|&length| scale.on_paper(length) <= LONGEST);
    fitting.or_else(|| lengths().next()).unwrap_or(Length::ZERO)
}

fn bar_words(bar: Length, unit: Unit) -> String {
    if !unit.is_imperial() {
        return Notation::new(Unit::Millimetre).text(bar);
    }
    let feet = bar.nanometres() / Unit::Foot.nanometres();
    if feet > 0 { format!("{feet}'") } else { Notation::new(Unit::Inch).text(bar) }
}

fn paper_words(bar: Length, scale: Scale, unit: Unit) -> String {
    let length = bar / scale.ratio();
    if unit.is_imperial() {
        format!("{}\"", length.decimal_places(Unit::Inch, 2))
    } else {
        format!("{} mm", length.decimal_places(Unit::Millimetre, 1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn furniture_stays_clear_of_the_body_and_of_itself() {
        for paper in [Paper::Letter, Paper::A4, Paper::LetterLandscape] {
            for (scale, unit) in
                [(Scale::one_to(1), Unit::Inch), (Scale::one_to(32), Unit::Inch), (Scale::one_to(25), Unit::Metre)]
            {
                let mut figure = Figure::new("sheet", paper);
                let frame =
                    SheetFrame::new("A very long name of a boat, and of its owner, and of the harbour", "Panels")
                        .note("seen from above")
                        .scale(scale, unit)
                        .bow(Bow::Up);
                frame.draw(&mut figure, 12, 34);
                assert_eq!(figure.overlaps(), []);
                assert!(figure.texts.iter().all(|text| !text.bounds().overlaps(body(paper))));
            }
        }
    }

    #[test]
    fn the_bar_is_a_round_length() {
        assert_eq!(bar_length(Scale::one_to(16), Unit::Inch), Length::inches(24));
        assert_eq!(bar_words(Length::inches(24), Unit::Inch), "2'");
        assert_eq!(paper_words(Length::inches(24), Scale::one_to(16), Unit::Inch), "1.5\"");
        assert_eq!(bar_length(Scale::one_to(20), Unit::Millimetre), Length::of(500, Unit::Millimetre));
    }
}
