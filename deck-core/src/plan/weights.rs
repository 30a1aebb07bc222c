//! The weight ledger: what comes off, what goes on, and where it sits. Mass only.

use super::Plan;
use crate::arrange::Block;
use crate::geometry::{Path, Point};
use crate::job::Checked;
use crate::length::{Length, Unit};
use crate::outline::Opening;
use crate::published::STEEL_DENSITY;
use crate::strip_out::OldCovering;
use serde::{Deserialize, Serialize};

/// What comes off the boat and what goes on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Weights {
    /// The lines, removed first.
    pub lines: Vec<WeightLine>,
    /// Pounds that come off, everything dry.
    pub removed_lb: f64,
    /// Pounds that go on.
    pub added_lb: f64,
    /// Pounds added less removed, everything dry.
    pub net_lb: f64,
    /// The same where the old boards were soaked as far as they may be.
    pub net_soaked_lb: f64,
    /// Moment of the net mass about the bow edge, in pounds times feet: how the trim changes.
    pub net_moment_lb_ft: f64,
    /// Station at which the net mass acts, where there is some; it may lie off the boat where much comes off in one place
    /// and goes on in another.
    pub net_centre: Option<Length>,
    /// What comes off or goes on and was not weighed.
    pub missing: Vec<String>,
    /// What the ledger does not say.
    pub caution: String,
}

/// A line of the ledger.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct WeightLine {
    /// Whether it comes off or goes on.
    pub side: WeightSide,
    /// What it is.
    pub what: String,
    /// Pounds, dry.
    pub pounds: f64,
    /// Pounds when soaked, at most, where that is more.
    pub soaked_lb: Option<f64>,
    /// Station of its centre.
    pub centre: Length,
    /// What the figure rests on.
    pub basis: String,
}

/// Off or on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WeightSide {
    /// It comes off.
    Removed,
    /// It goes on.
    Added,
}

const CAUTION: &str = "Mass only. The boat's capacity label is not recomputed here: in the United States the federal rule is for \
                       monohulls under 20 ft, and a pontoon boat's label follows a voluntary standard. What is added counts \
                       against what the label leaves for people and gear.";

/// A ledger where the old deck is spoken of: without it there is nothing to set the new one against.
pub(super) fn weights(plan: &Plan, checked: &Checked) -> Option<Weights> {
    let old = plan.strip_out.as_ref()?;
    let deck = centre(checked);
    let mut lines = vec![WeightLine {
        side: WeightSide::Removed,
        what: format!("{} old boards", old.boards.count),
        pounds: old.boards.dry_lb,
        soaked_lb: Some(old.boards.soaked_most_lb),
        centre: deck,
        basis: "area and thickness; weight of plywood as in the table of published weights".into(),
    }];
    let line = |side, what: &str, pounds, centre, basis: &str| WeightLine {
        side,
        what: what.into(),
        pounds: tenth(pounds),
        soaked_lb: None,
        centre,
        basis: basis.into(),
    };
    if let Some(pounds) = old.disposal.covering_lb {
        lines.push(line(
            WeightSide::Removed,
            "old covering",
            pounds,
            deck,
            "area, and the weight by area that the job gives",
        ));
    }
    let shank = "shanks of steel as the new fastener, heads left out; typical, unconfirmed";
    let each = steel(checked);
    lines.push(line(WeightSide::Removed, "old fasteners", each * old.fastener_count.likely.number(), deck, shank));
    for panel in &plan.panels {
        let shapes: Vec<&Path<()>> = panel.openings.iter().map(|opening| &opening.shape).collect();
        let (what, pounds) = (format!("panel {}", panel.label), panel.weight_lb.unwrap_or(0.0));
        let centre = centre_of(&panel.shape, &shapes, checked);
        lines.push(line(WeightSide::Added, &what, pounds, centre, "area and thickness, as above"));
    }
    if let Some(division) = plan.division.as_ref().filter(|division| !division.blocks.is_empty()) {
        let pounds = division.count(checked.thickness).weight_lb;
        let centre = on_the_tape(centre_of_blocks(&division.blocks), checked);
        lines.push(line(WeightSide::Added, "blocks under joints", pounds, centre, "area and thickness, as above"));
    }
    let psf = checked.covering.as_ref().and_then(|covering| covering.psf);
    if let Some(psf) = psf {
        let pounds = old.boards.area.number(Unit::Foot) * psf.number();
        lines.push(line(
            WeightSide::Added,
            "covering",
            pounds,
            deck,
            "area without wrap, and the weight by area that the job gives",
        ));
    }
    if let Some(fastening) = &plan.fasteners {
        let count = fastening.count as f64;
        let stations =
            fastening.rows.iter().map(|row| row.station.as_inches() * row.positions.len() as f64).sum::<f64>();
        let centre = if fastening.count == 0 { deck } else { on_the_tape(stations / count, checked) };
        lines.push(line(WeightSide::Added, "fasteners", each * count, centre, shank));
    }
    let mut missing = Vec::new();
    if old.disposal.covering_lb.is_none() && old.covering.held != OldCovering::None {
        missing.push("the old covering".to_owned());
    }
    if checked.covering.is_some() && psf.is_none() {
        missing.push("the new covering".to_owned());
    }
    missing.push("glue, tape, sealer and filler".to_owned());
    Some(Weights::new(lines, missing, checked))
}

impl Weights {
    fn new(lines: Vec<WeightLine>, missing: Vec<String>, checked: &Checked) -> Weights {
        let sum = |side: WeightSide| lines.iter().filter(|line| line.side == side).map(|line| line.pounds).sum::<f64>();
        let (removed, added) = (sum(WeightSide::Removed), sum(WeightSide::Added));
        let water: f64 = lines.iter().filter_map(|line| Some(line.soaked_lb? - line.pounds)).sum();
        let moment: f64 = lines.iter().map(|line| line.sign() * line.pounds * line.centre.as_inches()).sum();
        let net = added - removed;
        Weights {
            removed_lb: tenth(removed),
            added_lb: tenth(added),
            net_lb: tenth(net),
            net_soaked_lb: tenth(net - water),
            net_moment_lb_ft: tenth(moment / 12.0),
            net_centre: (tenth(net) != 0.0).then(|| on_the_tape(moment / net, checked)),
            caution: CAUTION.into(),
            missing,
            lines,
        }
    }
}

impl WeightLine {
    fn sign(&self) -> f64 {
        match self.side {
            WeightSide::Removed => -1.0,
            WeightSide::Added => 1.0,
        }
    }
}

/// Pounds of a fastener's shank.
fn steel(checked: &Checked) -> f64 {
    const POUNDS_PER_KILOGRAM: f64 = 2.204_622_621_848_776;
    let fastener = &checked.settings.schedule.fastener;
    let metres = |length: Length| length.in_unit(Unit::Metre);
    let volume = metres(fastener.diameter).powi(2) / 4.0 * std::f64::consts::PI * metres(fastener.length);
    volume * STEEL_DENSITY * POUNDS_PER_KILOGRAM
}

fn centre(checked: &Checked) -> Length {
    let shapes: Vec<Path<()>> = checked.openings.iter().map(Opening::path).collect();
    centre_of(checked.outline.path(), &shapes.iter().collect::<Vec<_>>(), checked)
}

/// Station of the middle of an area with holes: moments of the flattened corners.
fn centre_of<T: Copy>(path: &Path<T>, holes: &[&Path<()>], checked: &Checked) -> Length {
    let tolerance = Length::from_nanometres(10_000);
    let whole = moments(&path.flatten(tolerance));
    let (area, moment) = holes
        .iter()
        .map(|hole| moments(&hole.flatten(tolerance)))
        .fold(whole, |(area, moment), (less, off)| (area - less, moment - off));
    if area > 0.0 { on_the_tape(moment / area, checked) } else { Length::ZERO }
}

/// Station of the middle of all blocks, in inches.
fn centre_of_blocks(blocks: &[Block]) -> f64 {
    let (area, moment) = blocks.iter().fold((0.0, 0.0), |(area, moment), block| {
        let own = block.length.as_inches() * block.width.as_inches();
        (area + own, moment + own * (block.fore.as_inches() + block.aft.as_inches()) / 2.0)
    });
    if area > 0.0 { moment / area } else { 0.0 }
}

/// Area and first moment about station 0, in inches.
fn moments(corners: &[Point]) -> (f64, f64) {
    let next = corners.iter().skip(1).chain(corners.first());
    corners.iter().zip(next).fold((0.0, 0.0), |(area, moment), (from, to)| {
        let [(ax, ay), (bx, by)] = [from, to].map(|point| (point.x.as_inches(), point.y.as_inches()));
        let cross = ax * by - bx * ay;
        (area + cross / 2.0, moment + (ax + bx) * cross / 6.0)
    })
}

/// A station on the tape's marks, sixteenths or millimetres: no ledger is finer.
fn on_the_tape(inches: f64, checked: &Checked) -> Length {
    let imperial = checked.settings.notation.unit.is_imperial();
    let mark = if imperial { Length::inch_fraction(1, 16) } else { Length::of(1, Unit::Millimetre) };
    let count = Length::nearest(inches / mark.as_inches()).nanometres();
    mark * count
}

fn tenth(pounds: f64) -> f64 {
    let rounded = (pounds * 10.0).round() / 10.0;
    // No minus before nothing.
    if rounded == 0.0 { 0.0 } else { rounded }
}
