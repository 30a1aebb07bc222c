//! An outline from the handful of measures that most decks have.

use super::Rim;
use crate::error::{Error, Fault, Faults, Kind};
use crate::geometry::{Arc, Path, Point, Side, Turn};
use crate::length::Length;
use serde::Serialize;

/// A deck by its measures, alike to port and starboard but for the notch.
///
/// # Examples
/// ```
/// use deck_core::outline::{BowCorner, Notch, Parametric};
/// let deck = Parametric::new("22' 6\"".parse()?, "102 in".parse()?)
///     .bow(BowCorner::Radius("12 in".parse()?))
///     .notch(Notch::new("30 in".parse()?, "24 in".parse()?));
/// assert!(deck.path().is_ok());
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Parametric {
    /// Length over all, along the centreline.
    pub length: Length,
    /// Greatest beam.
    pub beam: Length,
    /// How the bow corners are cut; none: square.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bow: Option<BowCorner>,
    /// How the deck narrows to the bow; none: it does not.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taper: Option<Taper>,
    /// The motor notch in the stern; none: straight.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notch: Option<Notch>,
}

/// How both bow corners are cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum BowCorner {
    /// Rounded to a radius.
    Radius(Length),
    /// Cut straight, so far from the corner along both sides.
    Clip(Length),
}

/// The deck narrows in straight lines to the bow.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Taper {
    /// How far aft of the bow edge the narrowing ends.
    pub length: Length,
    /// Beam at the bow edge, before its corners are cut.
    pub bow_beam: Length,
}

/// A rectangular cut-out open to the stern.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Notch {
    /// Width athwart.
    pub width: Length,
    /// Depth, forward from the stern edge.
    pub depth: Length,
    /// Distance of its port edge from the deck's port edge; none: in the middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_port: Option<Length>,
    /// Radius of the two inside corners.
    #[serde(default, skip_serializing_if = "Length::is_zero_ref")]
    pub inside_radius: Length,
    /// Radius of the two corners at the stern edge.
    #[serde(default, skip_serializing_if = "Length::is_zero_ref")]
    pub stern_radius: Length,
}

impl Notch {
    /// A notch in the middle of the stern with square corners.
    pub fn new(width: Length, depth: Length) -> Notch {
        Notch { width, depth, from_port: None, inside_radius: Length::ZERO, stern_radius: Length::ZERO }
    }

    /// With its port edge so far from the deck's port edge.
    #[must_use]
    pub fn from_port(mut self, distance: Length) -> Notch {
        self.from_port = Some(distance);
        self
    }

    /// With rounded inside corners.
    #[must_use]
    pub fn inside_radius(mut self, radius: Length) -> Notch {
        self.inside_radius = radius;
        self
    }

    /// With rounded corners at the stern edge.
    #[must_use]
    pub fn stern_radius(mut self, radius: Length) -> Notch {
        self.stern_radius = radius;
        self
    }
}

impl Parametric {
    /// A rectangular deck.
    pub fn new(length: Length, beam: Length) -> Parametric {
        Parametric { length, beam, bow: None, taper: None, notch: None }
    }

    /// With cut bow corners.
    #[must_use]
    pub fn bow(mut self, bow: BowCorner) -> Parametric {
        self.bow = Some(bow);
        self
    }

    /// Narrowing to the bow.
    #[must_use]
    pub fn taper(mut self, length: Length, bow_beam: Length) -> Parametric {
        self.taper = Some(Taper { length, bow_beam });
        self
    }

    /// With a motor notch.
    #[must_use]
    pub fn notch(mut self, notch: Notch) -> Parametric {
        self.notch = Some(notch);
        self
    }

    /// The closed path; pointers of errors are relative to the deck.
    ///
    /// # Errors
    /// Every measure that is below zero or does not fit the others.
    pub fn path(&self) -> Result<Path<Rim>, Error> {
        self.check()?;
        let mut walk = Walk { corners: Vec::new() };
        self.port_bow(&mut walk);
        self.stern(&mut walk);
        self.starboard_bow(&mut walk);
        Ok(Path::new(walk.sides()))
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        for (pointer, length, may_be_zero) in self.measures() {
            if length.is_negative() || (length.is_zero() && !may_be_zero) {
                let kind = if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
                let accepted = if may_be_zero { "Zero or more is accepted." } else { "More than zero is accepted." };
                let message = format!("{length} is no measure of a deck.");
                faults.push(Fault::new(kind, length.to_string(), message, accepted).at(pointer));
            }
        }
        if faults.is_empty() {
            self.check_fit(&mut faults);
        }
        faults.finish()
    }

    fn measures(&self) -> Vec<(&'static str, Length, bool)> {
        let mut all = vec![("/length", self.length, false), ("/beam", self.beam, false)];
        match self.bow {
            Some(BowCorner::Radius(size)) => all.push(("/bow/radius", size, true)),
            Some(BowCorner::Clip(size)) => all.push(("/bow/clip", size, true)),
            None => {}
        }
        if let Some(taper) = self.taper {
            all.extend([("/taper/length", taper.length, false), ("/taper/bow_beam", taper.bow_beam, false)]);
        }
        if let Some(notch) = self.notch {
            all.extend([("/notch/width", notch.width, false), ("/notch/depth", notch.depth, false)]);
            all.extend(notch.from_port.map(|length| ("/notch/from_port", length, false)));
            all.push(("/notch/inside_radius", notch.inside_radius, true));
            all.push(("/notch/stern_radius", notch.stern_radius, true));
        }
        all
    }

    fn check_fit(&self, faults: &mut Faults) {
        let mut refuse = |kind, pointer: &str, value: Length, message: String, accepted: String| {
            faults.push(Fault::new(kind, value.to_string(), message, accepted).at(pointer));
        };
        let (length, beam) = (self.length, self.beam);
        if let Some(taper) = self.taper {
            if taper.bow_beam > beam {
                let message = format!("The beam at the bow, {}, is wider than the deck ({beam}).", taper.bow_beam);
                let accepted = format!("It lies above 0 and not above {beam}.");
                refuse(Kind::OutlineCornerTooLarge, "/taper/bow_beam", taper.bow_beam, message, accepted);
            }
            if taper.length > length {
                let message = format!("The taper, {}, is longer than the deck ({length}).", taper.length);
                let accepted = format!("It lies above 0 and not above {length}.");
                refuse(Kind::OutlineCornerTooLarge, "/taper/length", taper.length, message, accepted);
            }
        }
        let room = self.bow_room();
        if let Some((pointer, size, reach)) = self.bow_reach().filter(|(_, _, reach)| *reach > room) {
            let message = format!("A bow corner of {size} takes {reach} of each side; there is {room}.");
            refuse(Kind::OutlineCornerTooLarge, pointer, size, message, "Make it smaller.".into());
        }
        if let Some(notch) = self.notch {
            self.check_notch(&notch, &mut refuse);
        }
    }

    fn check_notch(&self, notch: &Notch, refuse: &mut impl FnMut(Kind, &str, Length, String, String)) {
        let port = notch.from_port.unwrap_or((self.beam - notch.width) / 2);
        let rounding = notch.stern_radius;
        if port < rounding
            || port.is_zero()
            || port + notch.width + rounding > self.beam
            || port + notch.width >= self.beam
        {
            let message = format!(
                "A notch {} wide, {port} from the port edge, does not fit a stern of {}.",
                notch.width, self.beam
            );
            let accepted = "Deck is left on both sides of it, outside its stern corners' radius.".into();
            refuse(Kind::OutlineNotchOutside, "/notch/width", notch.width, message, accepted);
        }
        let bow = self.bow_reach().map_or(Length::ZERO, |(_, _, reach)| reach);
        if notch.depth >= self.length - bow {
            let message = format!("A notch {} deep reaches the bow of a deck {} long.", notch.depth, self.length);
            refuse(Kind::OutlineNotchOutside, "/notch/depth", notch.depth, message, "Make it less deep.".into());
        }
        if notch.inside_radius * 2 > notch.width || notch.inside_radius + notch.stern_radius > notch.depth {
            let message = format!("An inside radius of {} does not fit the notch.", notch.inside_radius);
            let accepted = "Two of them fit its width, and one with the stern radius its depth.".into();
            refuse(Kind::OutlineCornerTooLarge, "/notch/inside_radius", notch.inside_radius, message, accepted);
        }
    }

    /// How much of each side there is for a bow corner.
    fn bow_room(&self) -> Length {
        let (run, rise) = self.side_slope();
        let edge = (self.beam - rise * 2) / 2;
        let side = if rise.is_zero() { self.length } else { run.hypotenuse(rise) };
        edge.min(side)
    }

    /// How far the side runs aft and out while it tapers.
    fn side_slope(&self) -> (Length, Length) {
        self.taper.map_or((self.length, Length::ZERO), |taper| (taper.length, (self.beam - taper.bow_beam) / 2))
    }

    /// How much of each side a bow corner takes: the clip itself, or the tangent length of the radius.
    ///
    /// # Method
    /// The tangent length of a circle in a corner of interior angle α is `r / tan(α/2)`; here tan(α/2) follows from the
    /// side's slope, and is 1 in a square corner.
    fn bow_reach(&self) -> Option<(&'static str, Length, Length)> {
        match self.bow? {
            BowCorner::Clip(size) => Some(("/bow/clip", size, size)),
            BowCorner::Radius(size) => {
                let (run, rise) = self.side_slope();
                let (run, rise) = (run.nanometres() as f64, rise.nanometres() as f64);
                let half = (rise / run).atan().midpoint(std::f64::consts::FRAC_PI_2);
                let reach = if rise == 0.0 { size } else { Length::nearest(size.nanometres() as f64 / half.tan()) };
                Some(("/bow/radius", size, reach))
            }
        }
        .filter(|(_, size, _)| !size.is_zero())
    }

    /// The two points where a bow corner starts and ends, port side, and the arc's radius where it is one.
    fn bow_points(&self) -> Option<(Point, Point, Option<Length>)> {
        let (_, size, reach) = self.bow_reach()?;
        let (run, rise) = self.side_slope();
        let on_edge = Point::new(Length::ZERO, rise + reach);
        let on_side = if rise.is_zero() {
            Point::new(reach, Length::ZERO)
        } else {
            let slant = run.hypotenuse(rise);
            let (along, out) = (reach.nanometres(), slant.nanometres());
            Point::new(run.part(along, out), rise - rise.part(along, out))
        };
        Some((on_edge, on_side, matches!(self.bow, Some(BowCorner::Radius(_))).then_some(size)))
    }

    /// From the bow edge around the port bow corner to the port side.
    fn port_bow(&self, walk: &mut Walk) {
        let (run, rise) = self.side_slope();
        let side = if rise.is_zero() { Rim::Port } else { Rim::BowCorner };
        if let Some((on_edge, on_side, radius)) = self.bow_points() {
            walk.corner(on_edge, radius.map(|radius| (on_side, radius, Turn::Left)), Rim::BowCorner);
            walk.corner(on_side, None, side);
        } else {
            walk.corner(Point::new(Length::ZERO, rise), None, side);
        }
        if !rise.is_zero() {
            walk.corner(Point::new(run, Length::ZERO), None, Rim::Port);
        }
    }

    /// Along the stern from port to starboard, around the notch.
    fn stern(&self, walk: &mut Walk) {
        let (aft, beam) = (self.length, self.beam);
        walk.corner(Point::new(aft, Length::ZERO), None, Rim::Stern);
        if let Some(notch) = self.notch {
            let port = notch.from_port.unwrap_or((beam - notch.width) / 2);
            let (starboard, fore) = (port + notch.width, aft - notch.depth);
            let (outer, inner) = (notch.stern_radius, notch.inside_radius);
            let at = Point::new;
            walk.rounded([at(aft, port - outer), at(aft - outer, port)], outer, Turn::Left, Rim::Notch);
            walk.rounded([at(fore + inner, port), at(fore, port + inner)], inner, Turn::Right, Rim::Notch);
            walk.rounded([at(fore, starboard - inner), at(fore + inner, starboard)], inner, Turn::Right, Rim::Notch);
            walk.rounded([at(aft - outer, starboard), at(aft, starboard + outer)], outer, Turn::Left, Rim::Stern);
        }
        walk.corner(Point::new(aft, beam), None, Rim::Starboard);
    }

    /// From the starboard side around its bow corner to the bow edge.
    fn starboard_bow(&self, walk: &mut Walk) {
        let (run, rise) = self.side_slope();
        let across = |point: Point| Point::new(point.x, self.beam - point.y);
        if !rise.is_zero() {
            walk.corner(across(Point::new(run, Length::ZERO)), None, Rim::BowCorner);
        }
        match self.bow_points() {
            Some((on_edge, on_side, radius)) => {
                let (start, end) = (across(on_side), across(on_edge));
                walk.corner(start, radius.map(|radius| (end, radius, Turn::Left)), Rim::BowCorner);
                walk.corner(end, None, Rim::Bow);
            }
            None => walk.corner(across(Point::new(Length::ZERO, rise)), None, Rim::Bow),
        }
    }
}

/// The corners met so far, each with the side that leaves it.
struct Walk {
    corners: Vec<Side<Rim>>,
}

impl Walk {
    fn corner(&mut self, from: Point, arc: Option<(Point, Length, Turn)>, edge: Rim) {
        let arc = arc.and_then(|(to, radius, turn)| Arc::through(from, to, radius, turn));
        self.corners.push(Side { from, arc, edge });
    }

    /// A corner rounded by an arc between two points, or sharp where the radius is zero; `edge` is the side after it.
    fn rounded(&mut self, [start, end]: [Point; 2], radius: Length, turn: Turn, edge: Rim) {
        if !radius.is_zero() {
            self.corner(start, Some((end, radius, turn)), Rim::Notch);
        }
        self.corner(end, None, edge);
    }

    /// The sides, without those of no length, which arise where two corners meet.
    fn sides(self) -> Vec<Side<Rim>> {
        let ends: Vec<Point> = self.corners.iter().skip(1).chain(self.corners.first()).map(|side| side.from).collect();
        self.corners.into_iter().zip(ends).filter(|(side, to)| side.from != *to).map(|(side, _)| side).collect()
    }
}
