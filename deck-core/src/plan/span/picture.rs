//! How the worst board sags, as a grid of whole micrometres.

use super::asked::Asked;
use super::figures::inches;
use super::found::SagPicture;
use super::points::BoardPlate;
use crate::length::Length;
use crate::panels::Panel;
use crate::span::{Plate, PlateLoad};

/// Places along the longer and the shorter side.
const PLACES: [usize; 2] = [33, 17];

/// Nanometres in the unit of the grid.
const MICROMETRE: i64 = 1000;

/// Which load a picture shows.
pub(super) enum Shown {
    /// The user's uniform load.
    Uniform,
    /// A point load by its name, with its middle where the board sags most.
    Point(String, [f64; 2]),
}

pub(super) fn picture(asked: &Asked<'_>, panel: &Panel, plate: &BoardPlate<'_>, shown: &Shown) -> Option<SagPicture> {
    let (load, words, at) = match shown {
        Shown::Uniform => {
            let load = asked.load.as_ref()?;
            (PlateLoad::uniform(load.psf / 144.0), load.name.clone(), None)
        }
        Shown::Point(name, at) => {
            let point = asked.points.iter().find(|point| point.name == *name)?;
            let pounds = point.pounds?;
            let size = [point.length.as_inches(), point.width.as_inches()];
            (PlateLoad::patch(*at, size, pounds), point.name.clone(), Some(plate.on_deck(*at)))
        }
    };
    let bent = plate.bent(load).ok()?;
    let (fore, port) = plate.corner;
    Some(SagPicture {
        panel: panel.label.clone(),
        load: words,
        station: at.map(|at| at.0),
        from_port: at.map(|at| at.1),
        fore,
        aft: fore + inches(plate.sides[1]),
        port,
        starboard: port + panel.length,
        micrometres: grid(&bent, plate.sides),
        greatest: inches(bent.deflection.most.value),
    })
}

fn grid(bent: &Plate, [length, width]: [f64; 2]) -> Vec<Vec<i64>> {
    let [along, across] = if length >= width { PLACES } else { [PLACES[1], PLACES[0]] };
    let part = |step: usize, steps: usize| step as f64 / (steps - 1) as f64;
    let sag = |x: f64, y: f64| bent.at(x, y).map_or(0, |state| micrometres(state.deflection));
    let row = |y: f64| (0..along).map(|step| sag(length * part(step, along), y)).collect();
    (0..across).map(|step| row(width * part(step, across))).collect()
}

fn micrometres(sag: f64) -> i64 {
    let nanometres = Length::nearest(sag * crate::length::Unit::Inch.nanometres() as f64).nanometres();
    (nanometres + MICROMETRE / 2).div_euclid(MICROMETRE)
}
