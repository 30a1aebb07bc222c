//! Writes a figure as SVG.
//!
//! Coordinates are millimetres with three decimals, which are whole micrometres, so that the same figure gives the same
//! bytes on every machine. Each text is set to the length that the layout counted on, whatever font the reader has.

use crate::draw::figure::{Anchor, Figure, Line, Micrometres, Path, Point, Rect, Shape, Step, Text, Tone};
use std::fmt::Write;

/// The figure as an SVG document, drawn on white paper of its own size.
pub fn write(figure: &Figure) -> String {
    let (width, height) = (millimetres(figure.width), millimetres(figure.height));
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\" \
         role=\"img\" font-family=\"DejaVu Sans, Verdana, sans-serif\" fill=\"none\" stroke-linejoin=\"round\">\n\
         <title>{}</title>\n<rect width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>\n",
        escaped(&figure.title)
    );
    // Writing to a String cannot fail.
    for shape in &figure.shapes {
        let _ = write_shape(&mut svg, shape);
    }
    for text in &figure.texts {
        let _ = write_text(&mut svg, text);
    }
    svg.push_str("</svg>\n");
    svg
}

fn write_shape(svg: &mut String, shape: &Shape) -> std::fmt::Result {
    let (Shape::Stroke(path, _) | Shape::Fill(path, _)) = shape;
    if path.subpaths.is_empty() {
        return Ok(());
    }
    write!(svg, "<path d=\"{}\"", data(path))?;
    match shape {
        Shape::Stroke(_, line) => write!(svg, " stroke=\"#000000\"{}", stroke(*line))?,
        Shape::Fill(_, tone) => write!(svg, " fill=\"{}\" fill-rule=\"evenodd\"", grey(*tone))?,
    }
    svg.push_str("/>\n");
    Ok(())
}

fn stroke(line: Line) -> String {
    let mut attributes = format!(" stroke-width=\"{}\"", millimetres(line.width()));
    if !line.dashes().is_empty() {
        let dashes: Vec<String> = line.dashes().iter().map(|&dash| millimetres(dash)).collect();
        let _ = write!(attributes, " stroke-dasharray=\"{}\"", dashes.join(" "));
    }
    attributes
}

fn grey(tone: Tone) -> String {
    let lightness = tone.lightness();
    format!("#{lightness:02x}{lightness:02x}{lightness:02x}")
}

fn data(path: &Path) -> String {
    let mut data = String::new();
    for subpath in &path.subpaths {
        let _ = write!(data, "M{}", place(subpath.start));
        for step in &subpath.steps {
            let _ = match step {
                Step::Line(to) => write!(data, "L{}", place(*to)),
                Step::Arc { to, radius, large, clockwise } => {
                    let radius = millimetres(*radius);
                    write!(data, "A{radius} {radius} 0 {} {} {}", u8::from(*large), u8::from(*clockwise), place(*to))
                }
            };
        }
        if subpath.closed {
            data.push('Z');
        }
    }
    data
}

fn write_text(svg: &mut String, text: &Text) -> std::fmt::Result {
    if text.words.is_empty() {
        return Ok(());
    }
    if text.masked {
        write_patch(svg, text.patch())?;
    }
    let (x, y) = (millimetres(text.at.x), millimetres(text.at.y));
    write!(svg, "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\" fill=\"#000000\"", millimetres(text.size.em()))?;
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => svg.push_str(" text-anchor=\"middle\""),
        Anchor::End => svg.push_str(" text-anchor=\"end\""),
    }
    if text.bold {
        svg.push_str(" font-weight=\"bold\"");
    }
    if text.turned {
        write!(svg, " transform=\"rotate(-90 {x} {y})\"")?;
    }
    let length = millimetres(text.width());
    writeln!(svg, " textLength=\"{length}\" lengthAdjust=\"spacingAndGlyphs\">{}</text>", escaped(&text.words))
}

fn write_patch(svg: &mut String, patch: Rect) -> std::fmt::Result {
    let [x, y, width, height] = [patch.left, patch.top, patch.width(), patch.height()].map(millimetres);
    writeln!(svg, "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>")
}

fn place(point: Point) -> String {
    format!("{} {}", millimetres(point.x), millimetres(point.y))
}

/// Micrometres as millimetres: at most three decimals and no zeros at the end.
fn millimetres(length: Micrometres) -> String {
    let (whole, part) = (length.unsigned_abs() / 1000, length.unsigned_abs() % 1000);
    let sign = if length < 0 { "-" } else { "" };
    if part == 0 {
        return format!("{sign}{whole}");
    }
    let decimals = format!("{part:03}");
    format!("{sign}{whole}.{}", decimals.trim_end_matches('0'))
}

/// The words with what XML reserves written out, and without the characters that XML cannot hold.
fn escaped(words: &str) -> String {
    let mut safe = String::with_capacity(words.len());
    for letter in words.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            // XML 1.0 (5th edition), production 2.
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => safe.push('\u{fffd}'),
            other => safe.push(other),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::{Paper, TextSize};

    #[test]
    fn a_small_figure_in_full() {
        let mut figure = Figure::new("Board <1>", Paper::Letter);
        figure.stroke(Path::circle(Point::new(20_000, 30_000), 2_500), Line::Hidden);
        figure.text(Text::new("7' 10-1/2\"", Point::new(10_000, 12_345), TextSize::FIGURE).masked());
        assert_eq!(
            write(&figure),
            concat!(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"215.9mm\" height=\"279.4mm\" viewBox=\"0 0 215.9 279.4\" ",
                "role=\"img\" font-family=\"DejaVu Sans, Verdana, sans-serif\" fill=\"none\" stroke-linejoin=\"round\">\n",
                "<title>Board &lt;1&gt;</title>\n<rect width=\"215.9\" height=\"279.4\" fill=\"#ffffff\"/>\n",
                "<path d=\"M17.5 30A2.5 2.5 0 0 1 22.5 30A2.5 2.5 0 0 1 17.5 30Z\" stroke=\"#000000\" stroke-width=\"0.25\" ",
                "stroke-dasharray=\"1.8 0.9\"/>\n",
                "<rect x=\"9.6\" y=\"9.664\" width=\"18.198\" height=\"3.421\" fill=\"#ffffff\"/>\n",
                "<text x=\"10\" y=\"12.345\" font-size=\"3.527\" fill=\"#000000\" textLength=\"17.398\" ",
                "lengthAdjust=\"spacingAndGlyphs\">7&#39; 10-1/2&quot;</text>\n</svg>\n"
            )
        );
    }

    #[test]
    fn millimetres_have_no_idle_zeros() {
        let written: Vec<String> = [0, 1, -1500, 25_400, -40].iter().map(|&length| millimetres(length)).collect();
        assert_eq!(written, ["0", "0.001", "-1.5", "25.4", "-0.04"]);
    }
}
