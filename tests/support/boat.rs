//! A boat in 64ths of an inch, its job file in inches or millimetres, and its mirror image.

use deck_core::nest::Effort;
use deck_core::plan::{Plan, Planner};
use deck_core::{Error, Job, Unit};
use serde_json::{Map, Value, json};

/// Nanometres in a 64th of an inch.
pub const SIXTY_FOURTH: i64 = 396_875;

/// How bow corners are cut.
#[derive(Debug, Clone, Copy)]
pub enum Bow {
    /// Square.
    Square,
    /// Rounded.
    Radius(i64),
    /// Cut straight.
    Clip(i64),
}

/// A cut-out in the stern.
#[derive(Debug, Clone, Copy)]
pub struct Notch {
    /// Width athwart.
    pub width: i64,
    /// Depth from the stern.
    pub depth: i64,
    /// Port edge from the deck's port edge; none: in the middle.
    pub from_port: Option<i64>,
    /// Radius of the inside corners.
    pub inside: i64,
    /// Radius of the corners at the stern.
    pub stern: i64,
}

/// What stations are read to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reading {
    /// The middle of the flange.
    Centre,
    /// The flange's fore edge.
    ForeEdge,
    /// The web of a C whose flange lies aft of it.
    WebAft,
    /// The web of a Z whose flange lies forward of it.
    WebFore,
}

/// A cross member.
#[derive(Debug, Clone, Copy)]
pub struct Member {
    /// The tape reading.
    pub station: i64,
    /// Its own flange; zero: the frame's.
    pub flange: i64,
    /// Ends from the port edge; none: at the deck's edges.
    pub ends: (Option<i64>, Option<i64>),
}

/// An opening.
#[derive(Debug, Clone, Copy)]
pub enum Hole {
    /// Station and athwart distance of the middle, diameter.
    Round([i64; 3]),
    /// Station of the fore edge, distance of the port edge, depth, width, corner radius.
    Rectangle([i64; 5]),
}

/// A boat; every length in 64ths of an inch.
#[derive(Debug, Clone)]
pub struct Boat {
    /// Length over all.
    pub length: i64,
    /// Greatest beam.
    pub beam: i64,
    /// Bow corners.
    pub bow: Bow,
    /// Length of the taper and beam at the bow.
    pub taper: Option<(i64, i64)>,
    /// Cut-out in the stern.
    pub notch: Option<Notch>,
    /// Flange width of members that do not have their own.
    pub flange: i64,
    /// What stations are read to.
    pub reading: Reading,
    /// The members from the bow aft.
    pub members: Vec<Member>,
    /// The openings.
    pub holes: Vec<Hole>,
    /// Zones that no seam crosses.
    pub zones: Vec<(i64, i64)>,
    /// Length and width of the sheets.
    pub sheets: Vec<(i64, i64)>,
    /// Gap between boards.
    pub gap: i64,
    /// Shortfall allowed at the stern.
    pub tolerance: i64,
    /// Least bearing.
    pub bearing: i64,
    /// Narrowest board.
    pub least_width: i64,
    /// Strip trimmed off each sheet edge.
    pub trim: i64,
    /// Screw diameter, spacing in edge rows and in field rows, edge distance, end distance.
    pub screw: [i64; 5],
    /// Whether rows are staggered.
    pub stagger: bool,
}

impl Boat {
    /// A plain deck on members at a spacing, with flanges of 2 in and full sheets of 48 in; measures in whole inches.
    pub fn plain(length: i64, beam: i64, spacing: i64) -> Boat {
        let member = |station| Member { station: station * 64, flange: 0, ends: (None, None) };
        Boat {
            length: length * 64,
            beam: beam * 64,
            bow: Bow::Square,
            taper: None,
            notch: None,
            flange: 128,
            reading: Reading::Centre,
            members: (0..length).step_by(usize::try_from(spacing).unwrap_or(1)).chain([length]).map(member).collect(),
            holes: Vec::new(),
            zones: Vec::new(),
            sheets: vec![(beam * 64, 48 * 64)],
            gap: 0,
            tolerance: 0,
            bearing: 32,
            least_width: 12 * 64,
            trim: 0,
            screw: [16, 8 * 64, 8 * 64, 24, 64],
            stagger: false,
        }
    }

    /// Fore and aft edge of a member's flange, in nanometres.
    pub fn flange_of(&self, member: &Member) -> (i64, i64) {
        let flange = if member.flange == 0 { self.flange } else { member.flange };
        let station = member.station * SIXTY_FOURTH;
        let (whole, half) = (flange * SIXTY_FOURTH, flange * SIXTY_FOURTH / 2);
        match self.reading {
            Reading::Centre => (station - half, station + half),
            Reading::ForeEdge | Reading::WebAft => (station, station + whole),
            Reading::WebFore => (station - whole, station),
        }
    }

    /// Edge distance in the metal, in nanometres: one and a half diameters.
    pub fn in_metal(&self) -> i64 {
        self.screw[0] * SIXTY_FOURTH * 3 / 2
    }

    /// The boat seen in a mirror: port and starboard change places.
    #[must_use]
    pub fn mirrored(&self) -> Boat {
        let mut boat = self.clone();
        boat.notch = self
            .notch
            .map(|notch| Notch { from_port: notch.from_port.map(|port| self.beam - notch.width - port), ..notch });
        for member in &mut boat.members {
            let (port, starboard) = member.ends;
            member.ends = (starboard.map(|end| self.beam - end), port.map(|end| self.beam - end));
        }
        for hole in &mut boat.holes {
            *hole = match *hole {
                Hole::Round([x, y, diameter]) => Hole::Round([x, self.beam - y, diameter]),
                Hole::Rectangle([x, y, depth, width, radius]) => {
                    Hole::Rectangle([x, self.beam - y - width, depth, width, radius])
                }
            };
        }
        boat
    }

    /// The job file, written in inches (as fractions) or in millimetres (as exact decimals).
    pub fn json(&self, unit: Unit) -> String {
        let w = |length: i64| written(length, unit);
        let mut deck = json!({ "length": w(self.length), "beam": w(self.beam) });
        match self.bow {
            Bow::Square => {}
            Bow::Radius(radius) => deck["bow"] = json!({ "radius": w(radius) }),
            Bow::Clip(clip) => deck["bow"] = json!({ "clip": w(clip) }),
        }
        if let Some((length, bow_beam)) = self.taper {
            deck["taper"] = json!({ "length": w(length), "bow_beam": w(bow_beam) });
        }
        if let Some(notch) = self.notch {
            deck["notch"] = json!({ "width": w(notch.width), "depth": w(notch.depth),
                "from_port": notch.from_port.map(w), "inside_radius": w(notch.inside), "stern_radius": w(notch.stern) });
        }
        let openings: Vec<Value> =
            self.holes.iter().enumerate().map(|(index, hole)| opening(index, hole, &w)).collect();
        let zone = |(index, &(from, to)): (usize, &(i64, i64))| json!({ "name": format!("zone {index}"), "from": w(from), "to": w(to) });
        let sheet = |(index, &(length, width)): (usize, &(i64, i64))| json!({ "label": format!("sheet {index}"), "length": w(length), "width": w(width), "thickness": w(48) });
        let [diameter, edge, field, in_ply, end] = self.screw.map(w);
        json!({
            "schema": 1, "name": "boat", "unit": unit.symbol(), "deck": deck, "frame": self.frame(&w),
            "openings": openings, "keep_clear": self.zones.iter().enumerate().map(zone).collect::<Vec<Value>>(),
            "stock": self.sheets.iter().enumerate().map(sheet).collect::<Vec<Value>>(),
            "gap": w(self.gap), "end_tolerance": w(self.tolerance),
            "fastening": { "diameter": diameter, "length": w(128), "edge_spacing": edge, "field_spacing": field,
                "edge_distance": in_ply, "end_distance": end, "stagger": self.stagger },
            "saw": { "kerf": w(8), "trim": w(self.trim) },
            "shop": { "least_bearing": w(self.bearing), "least_panel_width": w(self.least_width) },
        })
        .to_string()
    }

    fn frame(&self, w: &impl Fn(i64) -> Value) -> Value {
        let member = |member: &Member| {
            let mut fields = Map::from_iter([("station".to_owned(), w(member.station))]);
            fields.extend((member.flange != 0).then(|| ("flange".to_owned(), w(member.flange))));
            fields.extend(member.ends.0.map(|end| ("port_end".to_owned(), w(end))));
            fields.extend(member.ends.1.map(|end| ("starboard_end".to_owned(), w(end))));
            Value::Object(fields)
        };
        let members: Vec<Value> = self.members.iter().map(member).collect();
        let mut frame = json!({ "flange": w(self.flange), "wall": w(8), "members": members });
        let (measured_to, profile) = match self.reading {
            Reading::Centre => ("centre", None),
            Reading::ForeEdge => ("fore-edge", None),
            Reading::WebAft => ("web", Some(("C", "aft"))),
            Reading::WebFore => ("web", Some(("Z", "fore"))),
        };
        frame["measured_to"] = measured_to.into();
        if let Some((profile, faces)) = profile {
            frame["profile"] = profile.into();
            frame["faces"] = faces.into();
        }
        frame
    }

    /// The job, read from its file.
    ///
    /// # Errors
    /// What the library refuses.
    pub fn job(&self, unit: Unit) -> Result<Job, Error> {
        Job::from_json(&self.json(unit))
    }

    /// The plan, its sheets nested in the quickest way.
    ///
    /// # Errors
    /// What the library refuses.
    pub fn plan(&self, unit: Unit) -> Result<Plan, Error> {
        Planner::new(&self.job(unit)?).effort(Effort::Quick).plan()
    }
}

fn opening(index: usize, hole: &Hole, w: &impl Fn(i64) -> Value) -> Value {
    let name = format!("hole {index}");
    match *hole {
        Hole::Round(measures) => {
            let [x, y, diameter] = measures.map(w);
            json!({ "name": name, "round": { "x": x, "y": y, "diameter": diameter } })
        }
        Hole::Rectangle(measures) => {
            let [x, y, depth, width, radius] = measures.map(w);
            let rectangle = json!({ "x": x, "y": y, "depth": depth, "width": width, "corner_radius": radius });
            json!({ "name": name, "rectangle": rectangle })
        }
    }
}

/// A length as a person writes it: inches and a fraction, or the exact decimal in millimetres.
fn written(length: i64, unit: Unit) -> Value {
    if unit == Unit::Millimetre {
        let nanometres = length * SIXTY_FOURTH;
        let sign = if nanometres < 0 { "-" } else { "" };
        let (whole, part) = (nanometres.abs() / 1_000_000, nanometres.abs() % 1_000_000);
        return serde_json::from_str(&format!("{sign}{whole}.{part:06}")).unwrap_or(Value::Null);
    }
    if length % 64 == 0 {
        return (length / 64).into();
    }
    let sign = if length < 0 { "-" } else { "" };
    let halvings = length.trailing_zeros();
    let (whole, above, below) = (length.abs() / 64, (length.abs() % 64) >> halvings, 64 >> halvings);
    if whole == 0 { format!("{sign}{above}/{below}").into() } else { format!("{sign}{whole}-{above}/{below}").into() }
}
