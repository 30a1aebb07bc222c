//! What stands on a small place of a board: the board as an orthotropic plate on its true supports.
//!
//! The plate is the least rectangle around the board, between the middles of its outermost bearings or to the tips of its
//! overhangs. Openings, round corners and clipped ones are not taken out of it; what they weaken a person has to judge.

use super::asked::Asked;
use super::figures::significant;
use super::found::{Limit, PointCheck, PointLoad, PointZone};
use super::supports::Supports;
use super::uniform::{lowest, options};
use crate::error::Error;
use crate::geometry::Bounds;
use crate::length::Length;
use crate::panels::Panel;
use crate::published::{Capacity, Standing};
use crate::span::{
    Axis, Each, Plate, PlateLoad, PlateProblem, PlateSearch, PlateSupport, PlateWorst, PlateZones, Rigidity,
    assumed_torsion, capacity,
};

/// A board as a plate: `x` athwart from port, `y` aft from the fore edge.
pub(super) struct BoardPlate<'a> {
    problem: PlateProblem,
    /// Place of the plate's corner: station and distance from the port edge.
    pub(super) corner: (Length, Length),
    pub(super) sides: [f64; 2],
    supports: &'a Supports,
    bounds: Bounds,
    /// Capacities as the board spans athwart, and fore and aft.
    athwart: Capacity,
    aft: Capacity,
}

/// The zone of a load and its worst there, or why there is no figure.
pub(super) type Answer = Result<(PointZone, PlateWorst), String>;

/// A foot of width in inches: capacities are for that.
const FOOT: f64 = 12.0;

impl<'a> BoardPlate<'a> {
    /// The plate of a board; the reason where there is none.
    pub(super) fn new(
        asked: &Asked<'_>,
        panel: &Panel,
        supports: &'a Supports,
        axis: Axis,
    ) -> Result<Result<BoardPlate<'a>, String>, Error> {
        if supports.bays.is_empty() {
            return Ok(Err("no figure: the board bears on fewer than two members".into()));
        }
        let options = options(asked, supports.narrowest(), None, panel.length);
        let of = |axis| capacity(asked.panel, axis, &options);
        let (Some(aft), Some(athwart)) = (of(axis)?, of(other(axis))?) else {
            let reason = "a plate needs capacities about both axes, and one is not listed or given";
            return Ok(Err(format!("{}. {reason}.", crate::span::NO_FIGURE)));
        };
        let (fore, end) = extent(panel, supports);
        let sides = [panel.length.as_inches(), (end - fore).as_inches()];
        let (dx, dy) = (athwart.ei / FOOT, aft.ei / FOOT);
        let lines: Vec<PlateSupport> = supports
            .bearings
            .iter()
            .map(|bearing| {
                let y = (bearing.middle().max(fore).min(end) - fore).as_inches();
                let (from, to) = (bearing.port - panel.bounds.port, bearing.starboard - panel.bounds.port);
                let whole = from.is_zero() && to == panel.length;
                let line = PlateSupport::along(y);
                if whole { line } else { line.between(from.as_inches(), to.as_inches()) }
            })
            .collect();
        let rigidity = Rigidity::new(dx, dy, assumed_torsion(dx, dy));
        let problem = PlateProblem::new(sides[0], sides[1], rigidity, &lines);
        Ok(Ok(BoardPlate {
            problem,
            corner: (fore, panel.bounds.port),
            sides,
            supports,
            bounds: panel.bounds,
            athwart,
            aft,
        }))
    }

    /// The plate under one load; the reason where there is no such answer.
    pub(super) fn bent(&self, load: PlateLoad) -> Result<Plate, Error> {
        match (load.at, load.size) {
            (Some(at), Some(size)) => self.problem.search()?.bent(at, size, load.value),
            _ => self.problem.solve(&[load]),
        }
    }

    /// True where a place on the deck lies on the board.
    fn carries(&self, station: Length, from_port: Length) -> bool {
        let bounds = &self.bounds;
        (bounds.fore..bounds.aft).contains(&station) && (bounds.port..bounds.starboard).contains(&from_port)
    }

    /// What each of the loads does: its zone and its worst, or why there is no figure. Placed loads that stand on other
    /// boards are left out.
    pub(super) fn found(&self, asked: &Asked<'_>, known: &Known) -> Vec<(usize, Answer)> {
        let mut found = Vec::new();
        for (index, (load, zones)) in asked.points.iter().zip(&known.zones).enumerate() {
            match (load.station.zip(load.from_port), zones) {
                (Some((station, from_port)), _) if self.carries(station, from_port) => {
                    let at = [(from_port - self.corner.1).as_inches(), (station - self.corner.0).as_inches()];
                    let worst = known.placed(load, at);
                    found.push((index, worst.map(|worst| (PointZone::Placed, worst))));
                }
                (Some(_), _) | (None, None) => {}
                (None, Some(Err(reason))) => found.push((index, Err(reason.clone()))),
                (None, Some(Ok(zones))) => {
                    found.push((index, Ok((PointZone::Anywhere, zones.whole.clone()))));
                    found.extend(zones.inner.clone().map(|inner| (index, Ok((PointZone::AwayFromEdges, inner)))));
                }
            }
        }
        found
    }

    /// The limits of a load at a place.
    ///
    /// # Method
    /// Moments and sag by [`PlateSearch::zones`] or [`PlateSearch::at`], the moments against MR of either axis. Shear: the load goes off over
    /// the edges of what it covers, widened by half the board's thickness all round, at Fs of either axis; our own rule,
    /// derived here, no source.
    pub(super) fn check(&self, asked: &Asked<'_>, load: &PointLoad, zone: PointZone, worst: &PlateWorst) -> PointCheck {
        let force = force(load);
        let limits = Each {
            deflection: self.sag(asked, load, worst, force),
            bending: self.bending(asked, load, worst, force),
            shear: self.shear(asked, load),
        };
        let governing = lowest(&limits);
        let Limit { value, value_text, utilisation, .. } = limits.get(governing).clone();
        let (name, standing) = (load.name.clone(), Standing::Derived);
        let (allowable_pounds, allowable_text) = (value, value_text);
        PointCheck { name, zone, limits, governing, allowable_pounds, allowable_text, utilisation, standing }
    }

    fn limit(asked: &Asked<'_>, load: &PointLoad, pounds: f64, place: String, clause: String) -> Limit {
        let utilisation = load.pounds.map(|force| significant(force / pounds));
        let value_text = super::figures::force(asked.notation.unit, pounds);
        Limit { value: significant(pounds), value_text, utilisation, place, clause }
    }

    fn sag(&self, asked: &Asked<'_>, load: &PointLoad, worst: &PlateWorst, force: f64) -> Limit {
        let peak = worst.deflection.peak;
        let allowed = self.bay_at(peak.at[1]) / asked.service.deflection;
        let clause = format!(
            "sag of l/{} of the bay, or of twice an overhang (from memory); orthotropic plate (Bogner, Fox and Schmit 1965), EI = {} athwart and {} fore and aft, \
             torsion 0.5 √(Dx Dy) assumed",
            asked.service.deflection,
            significant(self.athwart.ei),
            significant(self.aft.ei)
        );
        Self::limit(asked, load, force * allowed / peak.value, self.place(asked, worst.deflection.load_at), clause)
    }

    fn bending(&self, asked: &Asked<'_>, load: &PointLoad, worst: &PlateWorst, force: f64) -> Limit {
        let moments = [
            (&worst.sagging_x, self.athwart.mr, "sagging athwart"),
            (&worst.hogging_x, self.athwart.mr, "hogging athwart"),
            (&worst.sagging_y, self.aft.mr, "sagging fore and aft"),
            (&worst.hogging_y, self.aft.mr, "hogging fore and aft"),
        ];
        let used = moments.map(|(peak, mr, name)| (peak.peak.value.abs() * FOOT / mr, peak.load_at, mr, name));
        let (part, at, mr, name) =
            used.into_iter().reduce(|most, other| if other.0 > most.0 { other } else { most }).unwrap_or_default();
        let clause = format!("MR = {} against the plate's moment, {name}", significant(mr));
        Self::limit(asked, load, force / part, self.place(asked, at), clause)
    }

    fn shear(&self, asked: &Asked<'_>, load: &PointLoad) -> Limit {
        let [length, width] = size(load);
        let (along, across) = (length + asked.thickness, width + asked.thickness);
        let pounds = 2.0 * (along * self.aft.fs + across * self.athwart.fs) / FOOT;
        let clause = format!(
            "Fs = {} and {} over the edges of the load, widened by half the board's thickness; derived here, no source",
            significant(self.aft.fs),
            significant(self.athwart.fs)
        );
        Self::limit(asked, load, pounds, "around the load".into(), clause)
    }

    /// The length that the sag at a place is a part of: the bay's, or twice the overhang's.
    fn bay_at(&self, y: f64) -> f64 {
        let here = self.corner.0.as_inches() + y;
        let middles: Vec<f64> = self.supports.bearings.iter().map(|bearing| bearing.middle().as_inches()).collect();
        let [fore, aft] = self.supports.overhangs.map(Length::as_inches);
        if fore > 0.0 && middles.first().is_some_and(|first| here < *first) {
            return 2.0 * fore;
        }
        if aft > 0.0 && middles.last().is_some_and(|last| here > *last) {
            return 2.0 * aft;
        }
        let bay = self.supports.bays.iter().zip(middles.iter().skip(1)).find(|(_, end)| here <= **end);
        let bay = bay.map(|(bay, _)| bay).or(self.supports.bays.last());
        bay.map_or(0.0, |bay| bay.spacing.as_inches())
    }

    /// Where the middle of a load stands, in words.
    fn place(&self, asked: &Asked<'_>, at: [f64; 2]) -> String {
        let (station, port) = self.on_deck(at);
        let say = |length: Length| asked.notation.figure(length);
        format!("load about {} aft and {} from port", say(station), say(port))
    }

    /// Station, and distance from the port edge.
    pub(super) fn on_deck(&self, [x, y]: [f64; 2]) -> (Length, Length) {
        (self.corner.0 + super::figures::inches(y), self.corner.1 + super::figures::inches(x))
    }
}

/// Where each load is worst on the plates that were met so far: boards that lie alike are one plate.
#[derive(Default)]
pub(super) struct Worsts(Vec<Known>);

/// A plate made ready, and of each load without a place what it does at worst.
pub(super) struct Known {
    problem: PlateProblem,
    strength: [f64; 2],
    search: Result<PlateSearch, String>,
    zones: Vec<Option<Result<PlateZones, String>>>,
}

impl Worsts {
    /// What is known of a plate.
    pub(super) fn of(&mut self, plate: &BoardPlate<'_>, asked: &Asked<'_>) -> Option<&Known> {
        let strength = [plate.athwart.mr / FOOT, plate.aft.mr / FOOT];
        let same = |known: &Known| {
            known.problem == plate.problem && known.strength.map(f64::to_bits) == strength.map(f64::to_bits)
        };
        let index = self.0.iter().position(same).unwrap_or(self.0.len());
        if index == self.0.len() {
            self.0.push(Known::new(&plate.problem, strength, asked));
        }
        self.0.get(index)
    }
}

impl Known {
    fn new(problem: &PlateProblem, strength: [f64; 2], asked: &Asked<'_>) -> Known {
        let search = problem.search().map_err(|error| no_figure(&error));
        let worst = |load: &PointLoad| {
            let search = search.as_ref().map_err(Clone::clone)?;
            let found = search.zones(size(load), force(load), Some(strength));
            found.map_err(|error| format!("{}: {}", load.name, no_figure(&error)))
        };
        let zones = asked.points.iter().map(|load| load.station.is_none().then(|| worst(load))).collect();
        Known { problem: problem.clone(), strength, search, zones }
    }

    /// What a load does at its place.
    fn placed(&self, load: &PointLoad, at: [f64; 2]) -> Result<PlateWorst, String> {
        let found = self.search.as_ref().map_err(Clone::clone)?.at(at, size(load), force(load));
        found.map_err(|_| {
            format!(
                "{}: {}. It reaches past the middles of the board's outermost bearings, or past its ends.",
                load.name,
                crate::span::NO_FIGURE
            )
        })
    }
}

fn no_figure(error: &Error) -> String {
    format!("{}. {}", crate::span::NO_FIGURE, error.first().message)
}

fn size(load: &PointLoad) -> [f64; 2] {
    [load.length.as_inches(), load.width.as_inches()]
}

/// The user's force; limits do not depend on it.
fn force(load: &PointLoad) -> f64 {
    load.pounds.unwrap_or(1.0)
}

/// The other way round.
pub(super) fn other(axis: Axis) -> Axis {
    match axis {
        Axis::Across => Axis::Along,
        Axis::Along => Axis::Across,
    }
}

/// From the middle of the first bearing, or the fore edge beyond it, to the middle of the last or the aft edge.
fn extent(panel: &Panel, supports: &Supports) -> (Length, Length) {
    let middle = |index: usize| supports.bearings.get(index).map(super::found::Bearing::middle);
    let first = middle(0).unwrap_or(panel.bounds.fore);
    let last = middle(supports.bearings.len().saturating_sub(1)).unwrap_or(panel.bounds.aft);
    let [fore, aft] = supports.overhangs;
    (first - fore, last + aft)
}
