//! What the plan says of strength, as plain values.
//!
//! Loads are pounds to the square foot and forces pounds, each named by its field. Figures are rounded to four significant
//! digits once, where they enter the plan, and a utilisation is reckoned before that; chosen loads that were given in other
//! units to six; lengths that were reckoned are
//! rounded to a hundredth of a millimetre.

use crate::job::Service;
use crate::length::Length;
use crate::published::Standing;
use crate::span::hold::{Distance, Held};
use crate::span::{Axis, Criterion, Each, Load};
use serde::{Deserialize, Serialize};

/// What the boards take on their own supports, and what their fasteners hold.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlanSpan {
    /// Why there is no figure at all, where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub no_figure: Option<String>,
    /// What the boards are taken to be.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub panel: Option<String>,
    /// Wet or dry, load duration and limit of sag.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub service: Option<Service>,
    /// The uniform load that the user chose; none: limits only.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Load>,
    /// That load in the job's units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load_text: Option<String>,
    /// The loads on a small place.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub points: Vec<PointLoad>,
    /// Whose choice the loads are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rule: Option<String>,
    /// Each board as it lies.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub panels: Vec<PanelSpan>,
    /// Panels and ways to lay them that carry the uniform load on every board's supports: of each published series the
    /// first rating in the order of its table.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub enough: Vec<Enough>,
    /// What fasteners hold; none where the job does not say what is known of them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fasteners: Option<FastenerSpan>,
    /// How the worst board sags.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<SagPicture>,
    /// What was assumed and left out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// The caution that goes with every figure of strength.
    pub caution: String,
}

/// A load that stands on a small rectangle.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PointLoad {
    /// What it is.
    pub name: String,
    /// The force that the user chose; none: limits only.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pounds: Option<f64>,
    /// What it covers athwart.
    pub length: Length,
    /// What it covers fore and aft.
    pub width: Length,
    /// Where its size comes from.
    pub source: String,
    /// How sure that is.
    pub standing: Standing,
    /// The force in the job's units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub force_text: Option<String>,
    /// Where its middle stands, station; none: at the worst place of each board.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub station: Option<Length>,
    /// Where its middle stands, distance from the port edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_port: Option<Length>,
    /// Why there is no figure for it at its place on any board.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub no_figure: Option<String>,
}

/// Where on a board a small load stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PointZone {
    /// At the worst place of all.
    Anywhere,
    /// At the worst place with its own extent, at least, between it and each edge that no member holds.
    AwayFromEdges,
    /// Where the job says that it stands.
    Placed,
}

impl PointZone {
    /// The zone in words.
    pub fn words(self) -> &'static str {
        match self {
            PointZone::Anywhere => "anywhere",
            PointZone::AwayFromEdges => "away from free edges",
            PointZone::Placed => "where it stands",
        }
    }
}

/// A board on its supports.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PanelSpan {
    /// Its label.
    pub panel: String,
    /// How its strength axis lies to the supports.
    pub axis: Axis,
    /// What it bears on, from the bow aft.
    pub supports: Vec<Bearing>,
    /// The bays between them.
    pub bays: Vec<SpanBay>,
    /// How far it reaches past the middle of its first and last bearing, where it reaches past their edge.
    pub overhangs: [Length; 2],
    /// Why there is no figure by the table, where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub no_figure: Option<String>,
    /// The uniform load by the published tables' equations.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub table: Option<UniformCheck>,
    /// The uniform load of the continuous beam on the true supports, live load on the worst choice of bays.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beam: Option<UniformCheck>,
    /// Why the two differ.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub differ: Option<String>,
    /// The load by the table if the board lay the other way, psf.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub other_way: Option<f64>,
    /// The same in the job's units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub other_way_text: Option<String>,
    /// What stands on a small place: at its worst place, away from free edges, or where the job says.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub points: Vec<PointCheck>,
    /// Why there is no figure for those.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub no_points: Option<String>,
    /// The largest spacing of members at which the panel carries the uniform load by the table, either way.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub spacing: Vec<SpacingLimitOf>,
    /// What would shorten the bays that are longer than that.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub blocking: Vec<Blocking>,
}

/// The part of a flange that a board bears on: at a seam only what lies under it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Bearing {
    /// Number of the member.
    pub member: usize,
    /// Station of its fore edge.
    pub fore: Length,
    /// Station of its aft edge.
    pub aft: Length,
    /// Its width.
    pub width: Length,
    /// Where the member begins under the board, from the port edge.
    pub port: Length,
    /// Where it ends.
    pub starboard: Length,
}

/// Between two bearings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SpanBay {
    /// Number of the member forward of it.
    pub fore_member: usize,
    /// Number of the member aft of it.
    pub aft_member: usize,
    /// From the middle of one bearing to that of the next.
    pub spacing: Length,
    /// From edge to edge.
    pub clear: Length,
}

/// What uniform load a board takes by one method.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct UniformCheck {
    /// The limits.
    pub limits: Each<Limit>,
    /// The lowest of them.
    pub governing: Criterion,
    /// That one, psf.
    pub allowable_psf: f64,
    /// The same in the job's units.
    pub allowable_text: String,
    /// The user's load over it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub utilisation: Option<f64>,
    /// How sure the capacities behind it are.
    pub standing: Standing,
}

/// What stands on a small place of a board.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PointCheck {
    /// The load's name.
    pub name: String,
    /// Where on the board it stands.
    pub zone: PointZone,
    /// The limits.
    pub limits: Each<Limit>,
    /// The lowest of them.
    pub governing: Criterion,
    /// That one, pounds.
    pub allowable_pounds: f64,
    /// The same in the job's units.
    pub allowable_text: String,
    /// The user's force over it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub utilisation: Option<f64>,
    /// How sure it is.
    pub standing: Standing,
}

/// A limit by one criterion.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Limit {
    /// The load, psf, or the force, pounds.
    pub value: f64,
    /// The same in the job's units.
    pub value_text: String,
    /// The user's load over it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub utilisation: Option<f64>,
    /// Where it is reached.
    #[serde(rename = "where")]
    pub place: String,
    /// The equation or method, its figures and where they come from.
    pub clause: String,
}

/// How far apart the members may stand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SpacingLimitOf {
    /// How the strength axis lies to them.
    pub axis: Axis,
    /// The largest spacing; none where there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spacing: Option<Length>,
    /// What ends it.
    pub why: String,
}

/// Blocking in one bay.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Blocking {
    /// Number of the member forward of the bay.
    pub fore_member: usize,
    /// Number of the member aft of it.
    pub aft_member: usize,
    /// How many, evenly divided.
    pub count: usize,
    /// The spacing that they leave.
    pub spacing: Length,
    /// What they have to be.
    pub text: String,
}

/// A published panel, and a way to lay it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Enough {
    /// The series.
    pub series: String,
    /// The rating or thickness.
    pub rating: String,
    /// How the strength axis lies to the members.
    pub axis: Axis,
    /// The lowest of its loads on any board's supports, psf.
    pub allowable_psf: f64,
    /// The same in the job's units.
    pub allowable_text: String,
}

/// What the fasteners hold.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct FastenerSpan {
    /// The screw, in words.
    pub screw: String,
    /// The flanges' alloy.
    pub alloy: String,
    /// One screw of each sort: those that hold the same are one.
    pub screws: Vec<ScrewHold>,
    /// Each row.
    pub rows: Vec<RowHolds>,
    /// The lift on each row that the user chose, pounds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lift_pounds: Option<f64>,
    /// The side load on each row that the user chose, pounds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side_pounds: Option<f64>,
    /// What is not counted.
    pub notes: Vec<String>,
}

/// One screw.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct ScrewHold {
    /// Counted from 1; rows name it.
    pub number: usize,
    /// Wall thickness of the flange.
    pub wall: Length,
    /// From the screw's middle to the nearer edge of the flange: the least of its rows.
    pub edge_in_metal: Length,
    /// From the screw's middle to the nearer edge of the board: the least of its rows.
    pub edge_in_board: Length,
    /// Ways of lifting off, the weakest first.
    pub uplift: Vec<Held>,
    /// Ways of sliding, the weakest first; empty where an edge is too close.
    pub sideways: Vec<Held>,
    /// Pull-out by the formula.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pull_out_formula: Option<Held>,
    /// Pull-out by a laboratory's means.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pull_out_test: Option<Held>,
    /// Which of the two is carried, and why.
    pub pull_out_why: String,
    /// Distances that are not kept.
    pub too_close: Vec<Distance>,
}

/// What a row holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct RowHolds {
    /// Label of the panel.
    pub panel: String,
    /// Number of the member.
    pub member: usize,
    /// Number of the [`ScrewHold`]; none where the screws lie off the flange or the board.
    pub screw: Option<usize>,
    /// Screws in it.
    pub count: usize,
    /// Against lifting off, pounds.
    pub uplift_pounds: Option<f64>,
    /// Against sliding, pounds.
    pub sideways_pounds: Option<f64>,
    /// Against lifting off, in the job's units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub uplift_text: Option<String>,
    /// Against sliding, in the job's units.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sideways_text: Option<String>,
    /// The user's lift over it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lift_utilisation: Option<f64>,
    /// The user's side load over it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side_utilisation: Option<f64>,
}

/// How a board sags under a load, on a grid of places.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct SagPicture {
    /// Label of the panel.
    pub panel: String,
    /// The load, in words.
    pub load: String,
    /// Where the middle of a small load stands: station, and distance from the port edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub station: Option<Length>,
    /// See `station`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_port: Option<Length>,
    /// Station of the first row.
    pub fore: Length,
    /// Station of the last row.
    pub aft: Length,
    /// Distance of the first place of a row from the port edge.
    pub port: Length,
    /// Distance of the last place of a row from the port edge.
    pub starboard: Length,
    /// Rows from fore to aft, each from port to starboard, evenly divided: sag in micrometres, downward above zero.
    pub micrometres: Vec<Vec<i64>>,
    /// The greatest sag.
    pub greatest: Length,
}

impl PanelSpan {
    /// Every utilisation of the board that decides: the check, in words, and the ratio. A uniform load is decided by the
    /// table's clause; the beam beside it is no part of this.
    pub fn utilisations(&self) -> Vec<(String, f64)> {
        let uniform = self.table.iter().filter_map(|check| {
            Some((format!("uniform load by the table's clause, {}", check.governing), check.utilisation?))
        });
        let points = self.points.iter().filter_map(|check| {
            Some((format!("{} {}, {}", check.name, check.zone.words(), check.governing), check.utilisation?))
        });
        uniform.chain(points).collect()
    }
}

impl PlanSpan {
    /// Without a figure, for a reason.
    pub(super) fn none(reason: &str) -> PlanSpan {
        PlanSpan {
            no_figure: Some(reason.into()),
            panel: None,
            service: None,
            load: None,
            load_text: None,
            points: Vec::new(),
            rule: None,
            panels: Vec::new(),
            enough: Vec::new(),
            fasteners: None,
            picture: None,
            notes: Vec::new(),
            caution: crate::span::CAUTION.into(),
        }
    }
}

impl Default for PlanSpan {
    fn default() -> PlanSpan {
        PlanSpan::none("no figure")
    }
}
