//! How the worst board sags: bands of grey from the plan's grid, members dashed over them.

use crate::draw::bow_up;
use crate::draw::deck_shape;
use crate::draw::desk::Desk;
use crate::draw::figure::{Line, MILLIMETRE, Mapping, Micrometres, Path, Point, Rect, Text, TextSize, Tone};
use crate::draw::page::Page;
use crate::draw::sheet_frame::Bow;
use crate::length::{Length, Unit};
use crate::plan::SagPicture;

/// Height that the drawing may take.
const HIGHEST: Micrometres = 58 * MILLIMETRE;
/// Width of the key beside it.
const KEY: Micrometres = 56 * MILLIMETRE;
/// Cells into which each cell of the grid is divided.
const FINER: usize = 3;
/// Bands from none to the greatest sag; each is a quarter of it.
const BANDS: [Tone; 4] = [Tone::White, Tone::Pale, Tone::Light, Tone::Middle];

/// Draws the board and its key; the answer is where the room below begins.
pub(super) fn draw(desk: &Desk<'_>, page: &mut Page, picture: &SagPicture, body: Rect) -> Micrometres {
    let Some(panel) = desk.plan.panels.iter().find(|panel| panel.label == picture.panel) else { return body.top };
    let (room, key) = body.cut_right(KEY);
    let room = Rect { bottom: room.bottom.min(room.top + HIGHEST), ..room };
    let (local, outer) = bow_up::fitted(room.inset(2 * MILLIMETRE), (panel.length, panel.width), desk.ruler.unit());
    let mapping = Mapping { origin: local.point(-panel.bounds.fore, -panel.bounds.port), ..local };
    page.frame = page.frame.clone().scale(mapping.scale, desk.ruler.unit()).bow(Bow::Up);
    let figure = &mut page.figure;
    for (band, rect) in bands(picture, &mapping) {
        figure.fill(Path::rect(rect), band);
    }
    let board = desk.plan.span.panels.iter().find(|board| board.panel == picture.panel);
    for bearing in board.into_iter().flat_map(|board| &board.supports) {
        let band = deck_shape::band(&mapping, bearing.fore, bearing.aft, bearing.port, bearing.starboard);
        figure.stroke(Path::rect(band), Line::Hidden);
    }
    for opening in &panel.openings {
        figure.stroke(deck_shape::path(&mapping, &opening.shape), Line::Fine);
    }
    figure.stroke(deck_shape::path(&mapping, &panel.shape), Line::Thin);
    if let (Some(station), Some(from_port)) = (picture.station, picture.from_port) {
        figure.stroke(Path::circle(mapping.point(station, from_port), MILLIMETRE), Line::Thin);
    }
    let below = draw_key(desk, page, picture, key);
    below.max(outer.bottom) + 4 * MILLIMETRE
}

/// Rectangles of one tone each, cells of a row that are alike joined; white ones are left out.
fn bands(picture: &SagPicture, mapping: &Mapping) -> Vec<(Tone, Rect)> {
    let rows = picture.micrometres.len().saturating_sub(1) * FINER;
    let columns = picture.micrometres.first().map_or(0, Vec::len).saturating_sub(1) * FINER;
    let place = |from: Length, to: Length, step: usize, steps: usize| {
        let (step, steps) = (i64::try_from(step).unwrap_or(0), i64::try_from(steps).unwrap_or(1).max(1));
        from + (to - from).part(step, steps)
    };
    let corner = |row: usize, column: usize| {
        let station = place(picture.fore, picture.aft, row, rows);
        mapping.point(station, place(picture.port, picture.starboard, column, columns))
    };
    let mut found = Vec::new();
    for row in 0..rows {
        let mut start = 0;
        while start < columns {
            let tone = tone(picture, row, start);
            let end = (start + 1..columns).find(|column| self::tone(picture, row, *column) != tone).unwrap_or(columns);
            if tone != Tone::White {
                found.push((tone, Rect::spanning(corner(row, start), corner(row + 1, end))));
            }
            start = end;
        }
    }
    found
}

/// The band of the middle of a finer cell, on the twisted plane through the four places around it.
fn tone(picture: &SagPicture, row: usize, column: usize) -> Tone {
    let finer = i64::try_from(2 * FINER).unwrap_or(1);
    let within = |index: usize| i64::try_from(2 * (index % FINER) + 1).unwrap_or(0);
    let (down, right) = (within(row), within(column));
    let at =
        |row: usize, column: usize| picture.micrometres.get(row).and_then(|row| row.get(column)).copied().unwrap_or(0);
    let (top, left) = (row / FINER, column / FINER);
    let weigh = |a: i64, b: i64, part: i64| a * (finer - part) + b * part;
    let upper = weigh(at(top, left), at(top, left + 1), right);
    let lower = weigh(at(top + 1, left), at(top + 1, left + 1), right);
    // Both weighings multiply by `finer`.
    let sag = weigh(upper, lower, down);
    let most = greatest(picture) * finer * finer;
    let band = if sag <= 0 || most <= 0 { 0 } else { (sag * 4 / most).min(3) };
    usize::try_from(band).ok().and_then(|band| BANDS.get(band)).copied().unwrap_or(Tone::White)
}

/// The greatest sag in micrometres.
fn greatest(picture: &SagPicture) -> i64 {
    picture.greatest.nanometres() / 1000
}

fn draw_key(desk: &Desk<'_>, page: &mut Page, picture: &SagPicture, key: Rect) -> Micrometres {
    const BOX: Micrometres = 5 * MILLIMETRE;
    let figure = &mut page.figure;
    let load = desk.plan.span.load.as_ref().filter(|_| picture.station.is_none());
    let point = desk.plan.span.points.iter().find(|point| point.name == picture.load);
    let force = || point.and_then(|point| point.pounds).map(|pounds| desk.force(pounds)).unwrap_or_default();
    let amount = load.map_or_else(force, |load| desk.pressure(load.psf));
    let circle = if picture.station.is_some() { "; the circle is its place" } else { "" };
    let words = format!(
        "Panel {}, used up most: its sag under {} {amount}{circle}. Greatest {}. Dashed: what it bears on.",
        picture.panel,
        picture.load,
        sag(desk, picture.greatest)
    );
    let mut top = key.top + MILLIMETRE;
    top += figure.paragraph(Point::new(key.left, top), key.width(), &words, TextSize::BODY, false) + 2 * MILLIMETRE;
    for (band, tone) in BANDS.into_iter().enumerate().rev() {
        let place = Rect::new(key.left, top, key.left + 2 * BOX, top + BOX);
        figure.fill(Path::rect(place), tone);
        figure.stroke(Path::rect(place), Line::Fine);
        let part = |quarters: usize| picture.greatest.part(i64::try_from(quarters).unwrap_or(0), 4);
        let words = format!("{} to {}", sag(desk, part(band)), sag(desk, part(band + 1)));
        let at = Point::new(place.right + 2 * MILLIMETRE, place.centre().y);
        figure.text(Text::new(words, at, TextSize::BODY).level());
        top += BOX + MILLIMETRE;
    }
    top
}

/// A sag in 64ths of an inch or in millimetres.
fn sag(desk: &Desk<'_>, sag: Length) -> String {
    if desk.imperial() {
        // No place lost: a sag has few 64ths.
        format!("{}/64\"", (sag * 64).decimal_places(Unit::Inch, 1))
    } else {
        format!("{} mm", sag.decimal_places(Unit::Millimetre, 1))
    }
}
