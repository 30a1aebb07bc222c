//! Finds room for words on a sheet that already holds lines and words.

use super::overlap::runs_through;
use super::{Figure, Line, Micrometres, Path, Point, Rect, Shape, Text, TextSize, Tone};

/// Steps of the search for a clear spot, to each side of the middle.
const STEPS: i64 = 12;

/// Where a clear spot is looked for.
#[derive(Debug, Clone, Copy)]
pub struct Search<'a> {
    figure: &'a Figure,
    area: Rect,
    strict: bool,
    within: Option<&'a Path>,
}

impl Figure {
    /// True where no words lie within the rectangle.
    pub fn has_no_words(&self, room: Rect) -> bool {
        self.texts.iter().all(|text| text.words.is_empty() || !text.bounds().overlaps(room))
    }

    /// A search for a spot within an area that is free of words, of heavy lines and of dark fills.
    pub fn search(&self, area: Rect) -> Search<'_> {
        Search { figure: self, area, strict: false, within: None }
    }

    /// Writes words on a white patch at the clear spot nearest to the middle of the search. False where there is none.
    pub fn write_within(&mut self, area: Rect, within: Option<&Path>, words: &str, size: TextSize, bold: bool) -> bool {
        let search = Search { within, ..self.search(area) };
        let (width, height) = (super::width(words, size, bold), size.height());
        // With air around the words where there is room for it, and close to its neighbours otherwise.
        let spot = |air: Micrometres| Some(search.spot(width + 2 * air, height + 2 * air)?.inset(air));
        let spot = spot(size.em() / 2).or_else(|| spot(size.em() / 6));
        if let Some(spot) = spot {
            self.text(Text::filling(words, spot, size).bold(bold).masked());
        }
        spot.is_some()
    }

    /// Words in a small circle of their own white ground.
    pub fn bubble(&mut self, middle: Point, words: &str, size: TextSize) {
        let ring = Path::circle(middle, bubble_radius(words, size));
        self.fill(ring.clone(), Tone::White);
        self.stroke(ring, Line::Fine);
        self.text(Text::centred(words, middle, size).bold(true));
    }
}

impl<'a> Search<'a> {
    /// Fine, hidden and centre lines are avoided too.
    #[must_use]
    pub fn strict(mut self) -> Search<'a> {
        self.strict = true;
        self
    }

    /// The spot lies inside a path, by the even-odd rule.
    #[must_use]
    pub fn within(mut self, path: &'a Path) -> Search<'a> {
        self.within = Some(path);
        self
    }

    /// A spot of that width and height: the one nearest to the middle of the area that a grid of positions finds.
    pub fn spot(&self, width: Micrometres, height: Micrometres) -> Option<Rect> {
        let (slack_x, slack_y) = ((self.area.width() - width) / 2, (self.area.height() - height) / 2);
        if slack_x < 0 || slack_y < 0 {
            return None;
        }
        let obstacles = self.obstacles();
        let inside = self.within.map(Path::chords);
        let spot = |(right, down): (i64, i64)| {
            let corner =
                self.area.centre().moved(slack_x * right / STEPS - width / 2, slack_y * down / STEPS - height / 2);
            Rect::spanning(corner, corner.moved(width, height))
        };
        let mut steps: Vec<(i64, i64)> =
            (-STEPS..=STEPS).flat_map(|right| (-STEPS..=STEPS).map(move |down| (right, down))).collect();
        // From the middle outward; ties go up and to the left.
        steps.sort_by_key(|&(right, down)| {
            let (x, y) = (i128::from(slack_x) * i128::from(right), i128::from(slack_y) * i128::from(down));
            (x * x + y * y, down, right)
        });
        // No line of the path runs through an allowed spot, so that its middle tells for all of it.
        let is_inside = |spot: Rect| inside.as_ref().is_none_or(|edges| encloses(edges, spot.centre()));
        steps.into_iter().map(spot).find(|&spot| is_inside(spot) && obstacles.allow(spot))
    }

    fn obstacles(&self) -> Obstacles {
        let figure = self.figure;
        let words = figure.texts.iter().filter(|text| !text.words.is_empty()).map(Text::bounds);
        let mut obstacles =
            Obstacles { boxes: words.filter(|bounds| bounds.overlaps(self.area)).collect(), lines: Vec::new() };
        let near = |path: &Path| path.reach().is_some_and(|reach| reach.inset(-1).overlaps(self.area));
        for shape in &figure.shapes {
            match shape {
                Shape::Stroke(path, line) if (self.strict || line.is_heavy()) && near(path) => {
                    obstacles.lines.extend(path.chords());
                }
                Shape::Fill(path, tone) if *tone >= Tone::Middle && near(path) => obstacles.boxes.extend(path.reach()),
                _ => {}
            }
        }
        if let Some(path) = self.within {
            obstacles.lines.extend(path.chords());
        }
        obstacles.lines.retain(|&(from, to)| Rect::spanning(from, to).inset(-1).overlaps(self.area));
        obstacles
    }
}

/// True where a point lies inside closed lines, by the even-odd rule: a ray to the right crosses them an odd number of
/// times. An end on the ray counts as below it.
fn encloses(edges: &[(Point, Point)], point: Point) -> bool {
    let crosses = |&&(from, to): &&(Point, Point)| {
        let (upper, lower) = if from.y < to.y { (from, to) } else { (to, from) };
        let spans = upper.y <= point.y && point.y < lower.y;
        let cross = i128::from(lower.x - upper.x) * i128::from(point.y - upper.y)
            - i128::from(point.x - upper.x) * i128::from(lower.y - upper.y);
        spans && cross > 0
    };
    edges.iter().filter(crosses).count() % 2 == 1
}

/// Radius of the circle around words in a bubble.
pub fn bubble_radius(words: &str, size: TextSize) -> Micrometres {
    // Half the diagonal of the words' box, from a width that one figure or two have, and a little air.
    let width = super::width(words, size, true).max(size.em());
    width / 2 + size.em() * 35 / 100
}

struct Obstacles {
    boxes: Vec<Rect>,
    lines: Vec<(Point, Point)>,
}

impl Obstacles {
    fn allow(&self, spot: Rect) -> bool {
        self.boxes.iter().all(|bounds| !bounds.overlaps(spot))
            && self.lines.iter().all(|&(from, to)| !runs_through(from, to, spot))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::Paper;

    #[test]
    fn a_spot_avoids_lines_and_words() {
        let mut figure = Figure::new("spot", Paper::A4);
        let area = Rect::new(20_000, 20_000, 120_000, 80_000);
        figure.line(Point::new(70_000, 10_000), Point::new(70_000, 90_000), Line::Outline);
        figure.text(Text::centred("taken", Point::new(45_000, 50_000), TextSize::TITLE));
        let spot = figure.search(area).spot(20_000, 8_000).unwrap();
        assert!(area.holds(spot) && figure.has_no_words(spot));
        assert!(spot.right <= 70_000 || spot.left >= 70_000);
        assert_eq!(figure.search(area).spot(200_000, 8_000), None);
    }

    #[test]
    fn a_spot_within_a_frame_is_not_in_its_opening() {
        let figure = Figure::new("spot", Paper::A4);
        let (outer, inner) = (Rect::new(0, 0, 100_000, 60_000), Rect::new(30_000, 5_000, 90_000, 55_000));
        let mut frame = Path::rect(outer);
        frame.append(Path::rect(inner));
        let spot = figure.search(outer).within(&frame).spot(10_000, 5_000).unwrap();
        assert!(outer.holds(spot) && !inner.overlaps(spot));
    }

    #[test]
    fn a_bubble_may_lie_on_a_line() {
        let mut figure = Figure::new("bubble", Paper::A4);
        figure.line(Point::new(10_000, 50_000), Point::new(90_000, 50_000), Line::Cut);
        for (words, x) in [("1", 20_000), ("12", 40_000), ("104", 60_000)] {
            figure.bubble(Point::new(x, 50_000), words, TextSize::BODY);
        }
        assert_eq!(figure.overlaps(), []);
    }
}
