//! Writes figures as the pages of a PDF, with DejaVu Sans inside.
//!
//! The bytes depend on the figures and the title alone: there is no date, and the document's number is made from its
//! content.

use crate::draw::figure::{Anchor, Figure, Line, Micrometres, Path, Rect, Shape, Step, Text, Tone, arc_cubics};
use crate::error::{Error, Fault, Kind};
use krilla::color::luma;
use krilla::geom::{PathBuilder, Point, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, TextDirection};
use krilla::{Document, SerializeSettings};

struct Fonts {
    regular: Font,
    bold: Font,
}

/// The figures as a PDF, a page each.
///
/// # Errors
/// A document that cannot be put together: no figure, or a sheet of no size.
pub fn write(figures: &[Figure], title: &str) -> Result<Vec<u8>, Error> {
    if figures.is_empty() {
        return Err(failure("There is no figure to write."));
    }
    let fonts = fonts()?;
    let mut document = Document::new_with(SerializeSettings::default());
    document.set_metadata(
        Metadata::new()
            .title(title.to_owned())
            .language("en".to_owned())
            .creator(concat!("deck-core ", env!("CARGO_PKG_VERSION")).to_owned()),
    );
    for figure in figures {
        let settings = PageSettings::from_wh(points(figure.width), points(figure.height))
            .ok_or_else(|| failure("A sheet has no size."))?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        for shape in &figure.shapes {
            draw_shape(&mut surface, shape);
        }
        for text in &figure.texts {
            draw_text(&mut surface, text, &fonts);
        }
        surface.finish();
        page.finish();
    }
    document.finish().map_err(|error| failure(&format!("The PDF could not be put together ({error:?}).")))
}

fn failure(message: &str) -> Error {
    Fault::new(Kind::CannotWrite, "", message, "").into()
}

fn fonts() -> Result<Fonts, Error> {
    let font = |data: &'static [u8]| {
        Font::new(data.into(), 0).ok_or_else(|| failure("The font that is built in could not be read."))
    };
    Ok(Fonts { regular: font(dejavu::sans::regular())?, bold: font(dejavu::sans::bold())? })
}

/// Micrometres as points of 1/72 in.
fn points(length: Micrometres) -> f32 {
    point_of(length as f64)
}

fn point_of(length: f64) -> f32 {
    // A sheet is below 2^24 micrometres: an f32 is near to a hundredth of one.
    #[allow(clippy::cast_possible_truncation)]
    {
        (length * 72.0 / 25_400.0) as f32
    }
}

fn draw_shape(surface: &mut Surface<'_>, shape: &Shape) {
    let (fill, stroke, path) = match shape {
        Shape::Stroke(path, line) => (None, Some(stroke(*line)), path),
        Shape::Fill(path, tone) => (Some(fill(*tone)), None, path),
    };
    draw_path(surface, path, fill, stroke);
}

fn draw_path(surface: &mut Surface<'_>, path: &Path, fill: Option<Fill>, stroke: Option<Stroke>) {
    // A path of no extent draws nothing.
    if let Some(path) = outline(path) {
        surface.set_fill(fill);
        surface.set_stroke(stroke);
        surface.draw_path(&path);
    }
}

fn outline(path: &Path) -> Option<krilla::geom::Path> {
    let mut builder = PathBuilder::new();
    for subpath in &path.subpaths {
        let mut at = subpath.start;
        builder.move_to(points(at.x), points(at.y));
        for &step in &subpath.steps {
            match step {
                Step::Line(to) => builder.line_to(points(to.x), points(to.y)),
                Step::Arc { to, radius, large, clockwise } => {
                    for [a, b, end] in arc_cubics(at, to, radius, large, clockwise) {
                        let [a, b, end] = [a, b, end].map(|point| (point_of(point.0), point_of(point.1)));
                        builder.cubic_to(a.0, a.1, b.0, b.1, end.0, end.1);
                    }
                }
            }
            at = step.end();
        }
        if subpath.closed {
            builder.close();
        }
    }
    builder.finish()
}

fn stroke(line: Line) -> Stroke {
    let dash = (!line.dashes().is_empty())
        .then(|| StrokeDash { array: line.dashes().iter().map(|&dash| points(dash)).collect(), offset: 0.0 });
    Stroke { width: points(line.width()), line_join: LineJoin::Round, dash, ..Stroke::default() }
}

fn fill(tone: Tone) -> Fill {
    Fill { paint: luma::Color::new(tone.lightness()).into(), opacity: NormalizedF32::ONE, rule: FillRule::EvenOdd }
}

fn draw_text(surface: &mut Surface<'_>, text: &Text, fonts: &Fonts) {
    if text.words.is_empty() {
        return;
    }
    if text.masked {
        draw_patch(surface, text.patch());
    }
    let before = match text.anchor {
        Anchor::Start => 0,
        Anchor::Middle => text.width() / 2,
        Anchor::End => text.width(),
    };
    let font = if text.bold { &fonts.bold } else { &fonts.regular };
    let (x, y) = (points(text.at.x), points(text.at.y));
    if text.turned {
        surface.push_transform(&Transform::from_row(0.0, -1.0, 1.0, 0.0, x, y));
    } else {
        surface.push_transform(&Transform::from_translate(x, y));
    }
    surface.set_fill(Some(fill(Tone::Black)));
    surface.set_stroke(None);
    let start = Point::from_xy(-points(before), 0.0);
    let size = points(text.size.em());
    surface.draw_text(start, font.clone(), size, &text.words, false, TextDirection::LeftToRight);
    surface.pop();
}

fn draw_patch(surface: &mut Surface<'_>, patch: Rect) {
    draw_path(surface, &Path::rect(patch), Some(fill(Tone::White)), None);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::{Paper, Point, TextSize};

    fn sheet() -> Figure {
        let mut figure = Figure::new("sheet", Paper::A4);
        figure.stroke(Path::circle(Point::new(50_000, 50_000), 20_000), Line::Centre);
        figure.text(Text::centred("≈47-15/16″ (47.913)", Point::new(50_000, 50_000), TextSize::FIGURE).masked());
        figure
    }

    #[test]
    fn two_runs_give_the_same_bytes() {
        let first = write(&[sheet(), sheet()], "Packet").unwrap();
        assert_eq!(first, write(&[sheet(), sheet()], "Packet").unwrap());
        assert!(first.starts_with(b"%PDF-"));
        assert_ne!(first, write(&[sheet()], "Packet").unwrap());
    }

    #[test]
    fn no_figure_is_no_document() {
        let error = write(&[], "Packet").unwrap_err();
        assert_eq!(error.first().kind, Kind::CannotWrite);
    }
}
