//! Which roll, which way, with which seams.

use super::{Across, Adhesive, CutList, Drop, Glue, Roll, RollPiece, Run, RunChoice, Traffic, cut_list, seam_lines};
use crate::length::{Area, Length, Unit};
use crate::money::{Figure, Money};
use crate::outline::{Opening, Outline};
use serde::{Deserialize, Serialize};

/// What is covered, and with what.
#[derive(Debug, Clone, Copy)]
pub struct CoveringInput<'a> {
    /// The boat, for the cut list.
    pub boat: &'a str,
    /// The outline.
    pub outline: &'a Outline,
    /// The openings; they are cut out after laying.
    pub openings: &'a [Opening],
    /// Stations of the boards' seams.
    pub ply_seams: &'a [Length],
    /// Distances of the boards' joints along the boat from the port edge.
    pub ply_joints: &'a [Length],
    /// The rolls that can be had.
    pub rolls: &'a [Roll],
    /// The way it is to run.
    pub run: RunChoice,
    /// How far it goes round each edge.
    pub wrap: Length,
    /// Narrowest piece.
    pub least_piece: Length,
    /// Least distance from a seam of the boards, where both run alike.
    pub off_ply_seams: Length,
    /// Where people walk.
    pub traffic: &'a [Traffic],
    /// What other boats take off the same rolls.
    pub others: &'a [Drop],
    /// The glue; none: it is not glued all over.
    pub adhesive: Option<&'a Adhesive>,
}

/// A covering.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Covering {
    /// Every roll and way that was tried, in order.
    pub trials: Vec<CoverTrial>,
    /// How it is laid; none where no roll goes.
    pub laid: Option<Laid>,
    /// Why none goes.
    pub reason: Option<String>,
    /// The glue.
    pub glue: Option<Glue>,
    /// What to heed while it cures.
    pub reminders: Vec<String>,
}

/// A roll laid one way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CoverTrial {
    /// The roll.
    pub roll: String,
    /// The way.
    pub run: Run,
    /// How many seams it takes; none where it does not go.
    pub seams: Option<u32>,
    /// Running length that this boat takes.
    pub length: Option<Length>,
    /// What that costs, as it is sold.
    pub cost: Option<Money>,
    /// Why it does not go.
    pub why_not: Option<String>,
    /// True for the one that was taken.
    pub taken: bool,
}

/// A covering as it is laid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Laid {
    /// The roll.
    pub roll: String,
    /// Its width.
    pub roll_width: Length,
    /// Length of a whole roll.
    pub roll_length: Length,
    /// What it is sold by.
    pub sold_by: Length,
    /// Price of that much.
    pub price: Option<Money>,
    /// The way it runs.
    pub run: Run,
    /// How far it goes round each edge.
    pub wrap: Length,
    /// The pieces from port, or from the bow.
    pub pieces: Vec<CoverPiece>,
    /// The seams between them.
    pub seams: Vec<CoverSeam>,
    /// Length of a drop, wrap at both ends included.
    pub drop: Length,
    /// How the drops come off the rolls, those of other boats included.
    pub cuts: CutList,
    /// Running length that this boat takes.
    pub length: Length,
    /// How many of what it is sold by this boat takes.
    pub buy: u32,
    /// Area of the deck without its openings.
    pub area: Area,
    /// Area that is bought for this boat.
    pub bought: Area,
    /// What is bought beyond the deck's area, in a hundred of it, rounded to tenths.
    pub waste_percent: Figure,
}

/// A piece of covering.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CoverPiece {
    /// Number, from port or from the bow.
    pub number: u32,
    /// Where it starts across the run; below zero by the wrap at the first edge.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Its width.
    pub width: Length,
    /// True where it is as wide as the roll.
    pub whole: bool,
}

/// A seam of the covering.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct CoverSeam {
    /// Number, from port or from the bow.
    pub number: u32,
    /// From the port edge, or from the bow edge.
    pub at: Length,
    /// Distance to the nearest seam of the boards, where both run alike and there is one.
    pub from_ply_seam: Option<Length>,
}

struct Found<'a> {
    roll: &'a Roll,
    run: Run,
    seams: Vec<Length>,
    drop: Length,
    length: Length,
    buy: i64,
}

/// Covers a deck.
///
/// # Method
/// Each roll is tried each way that is asked for ([`seam_lines`], [`cut_list`]). Fewest seams, then least cost (where all
/// that go have prices; otherwise least area bought), then the first in the list.
pub fn covering(input: &CoveringInput<'_>) -> Covering {
    let mut trials = Vec::new();
    let mut found: Vec<(usize, Found<'_>)> = Vec::new();
    for roll in input.rolls {
        for run in runs(input.run) {
            let tried = input.tried(roll, run);
            let mut trial = CoverTrial::new(roll, run);
            match tried {
                Ok(laid) => {
                    trial.seams = u32::try_from(laid.seams.len()).ok();
                    trial.length = Some(laid.length);
                    trial.cost = roll.price.map(|price| price * laid.buy);
                    found.push((trials.len(), laid));
                }
                Err(why) => trial.why_not = Some(why),
            }
            trials.push(trial);
        }
    }
    let priced = found.iter().all(|(_, laid)| laid.roll.price.is_some());
    let rank = |(index, laid): &(usize, Found<'_>)| {
        let cost = laid.roll.price.filter(|_| priced).map(|price| price * laid.buy);
        (laid.seams.len(), cost, laid.bought().square_nanometres(), *index)
    };
    let best = found.iter().min_by_key(|found| rank(found));
    if let Some(trial) = best.and_then(|(index, _)| trials.get_mut(*index)) {
        trial.taken = true;
    }
    let laid = best.map(|(_, found)| input.laid(found));
    let reason = laid.is_none().then(|| {
        let whys: Vec<String> = trials
            .iter()
            .filter_map(|trial| Some(format!("{}, {}: {}", trial.roll, trial.run.words(), trial.why_not.as_ref()?)))
            .collect();
        format!("No roll goes. {}", whys.join(" "))
    });
    Covering {
        trials,
        laid,
        reason,
        glue: input.adhesive.map(|adhesive| Glue::new(adhesive, input.glued())),
        reminders: REMINDERS.iter().map(|words| (*words).to_owned()).collect(),
    }
}

/// Glue makers differ in every figure: the can goes before these.
const REMINDERS: [&str; 4] = [
    "Deck, covering and glue at 65 °F (18 °C) or warmer; other cans say 40, 50 or 60 °F: follow the can.",
    "Dry for 3 to 5 days: no rain, no dew, before and after.",
    "No traffic for 24 hours; furniture goes on when the cure is over.",
    "Cut openings out only when the covering lies and holds: from the middle to the corners, then along the edge.",
];

fn runs(choice: RunChoice) -> Vec<Run> {
    match choice {
        RunChoice::ForeAndAft => vec![Run::ForeAndAft],
        RunChoice::Athwart => vec![Run::Athwart],
        RunChoice::Best => vec![Run::ForeAndAft, Run::Athwart],
    }
}

impl Run {
    /// Its name.
    pub fn words(self) -> &'static str {
        match self {
            Run::ForeAndAft => "fore and aft",
            Run::Athwart => "athwart",
        }
    }
}

impl CoverTrial {
    fn new(roll: &Roll, run: Run) -> CoverTrial {
        CoverTrial { roll: roll.label.clone(), run, seams: None, length: None, cost: None, why_not: None, taken: false }
    }
}

impl Found<'_> {
    fn bought(&self) -> Area {
        Area::of(self.roll.step() * self.buy, self.roll.width)
    }
}

impl CoveringInput<'_> {
    fn tried<'a>(&self, roll: &'a Roll, run: Run) -> Result<Found<'a>, String> {
        let (along, extent) = match run {
            Run::ForeAndAft => (self.outline.length(), self.outline.beam()),
            Run::Athwart => (self.outline.beam(), self.outline.length()),
        };
        let drop = along + self.wrap * 2;
        if drop > roll.length {
            return Err("a drop is longer than the roll.".into());
        }
        let across = Across::new(extent, self.wrap, roll.width, self.least_piece).keep_off(self.keep_off(run));
        let Some(seams) = seam_lines(&across) else {
            return Err("no seams keep off traffic and the boards' seams with pieces that wide.".into());
        };
        let count = i64::try_from(seams.len() + 1).unwrap_or(i64::MAX);
        let length = drop * count;
        let buy = if roll.step() == roll.length {
            let drops = (0..count).map(|_| RollPiece::new(self.boat, "", drop)).collect();
            i64::try_from(cut_list(drops, roll.length).rolls.len()).unwrap_or(i64::MAX)
        } else {
            length.steps_of(roll.step())
        };
        Ok(Found { roll, run, seams, drop, length, buy })
    }

    /// Stretches across the run in which no seam may lie.
    fn keep_off(&self, run: Run) -> Vec<(Length, Length)> {
        let zone = |zone: &Traffic| match run {
            Run::ForeAndAft => (zone.y, zone.y + zone.width),
            Run::Athwart => (zone.x, zone.x + zone.depth),
        };
        let mut stretches: Vec<(Length, Length)> = self.traffic.iter().map(zone).collect();
        let off = self.off_ply_seams;
        stretches.extend(self.beneath(run).iter().map(|seam| (*seam - off, *seam + off)));
        stretches
    }

    /// The boards' seams that run as the covering does.
    fn beneath(&self, run: Run) -> &[Length] {
        match run {
            Run::ForeAndAft => self.ply_joints,
            Run::Athwart => self.ply_seams,
        }
    }

    fn laid(&self, found: &Found<'_>) -> Laid {
        let extent = if found.run == Run::ForeAndAft { self.outline.beam() } else { self.outline.length() };
        let ends = || found.seams.iter().copied().chain([extent + self.wrap]);
        let starts = std::iter::once(-self.wrap).chain(found.seams.iter().copied());
        let pieces: Vec<CoverPiece> = starts
            .zip(ends())
            .zip(1..)
            .map(|((from, to), number)| CoverPiece {
                number,
                from,
                to,
                width: to - from,
                whole: to - from == found.roll.width,
            })
            .collect();
        let seams = found.seams.iter().zip(1..).map(|(at, number)| {
            let distances = self.beneath(found.run).iter().map(|seam| (*seam - *at).abs());
            CoverSeam { number, at: *at, from_ply_seam: distances.min() }
        });
        let (area, bought) = (self.deck(), found.bought());
        let beyond = bought.number(Unit::Foot) - area.number(Unit::Foot);
        Laid {
            roll: found.roll.label.clone(),
            roll_width: found.roll.width,
            roll_length: found.roll.length,
            sold_by: found.roll.step(),
            price: found.roll.price,
            run: found.run,
            wrap: self.wrap,
            cuts: cut_list(self.drops(&pieces, found.drop), found.roll.length),
            seams: seams.collect(),
            pieces,
            drop: found.drop,
            length: found.length,
            buy: u32::try_from(found.buy).unwrap_or(u32::MAX),
            area,
            bought,
            waste_percent: Figure::nearest(beyond / area.number(Unit::Foot).max(1e-9) * 100.0, 1),
        }
    }

    /// This boat's drops, then those of the others, in the order in which they were given.
    fn drops(&self, pieces: &[CoverPiece], drop: Length) -> Vec<RollPiece> {
        let own = pieces.iter().map(|piece| RollPiece::new(self.boat, format!("piece {}", piece.number), drop));
        let others = self.others.iter().flat_map(|other| {
            (1..=other.count.unwrap_or(1))
                .map(|number| RollPiece::new(&other.boat, format!("drop {number}"), other.length))
        });
        own.chain(others).collect()
    }

    fn deck(&self) -> Area {
        let openings: i128 = self.openings.iter().map(|opening| opening.path().area()).sum();
        Area::from_square_nanometres((self.outline.path().area() - openings).max(0))
    }

    /// The deck without its openings, and the wrap all around.
    fn glued(&self) -> Area {
        self.deck() + Area::of(self.outline.path().perimeter(), self.wrap)
    }
}
