//! The settings that a plan rests on, as they are printed on its sheets.

use crate::fasteners::Fastener;
use crate::job::{Checked, Face, Paper};
use crate::length::{Length, Notation, Unit};
use serde::{Deserialize, Serialize};

/// 0.453 592 37 kg to the pound exactly (NIST Special Publication 811, 2008, appendix B.8).
const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;

/// What a plan rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Basis {
    /// The unit of bare numbers, and of what is printed.
    pub unit: Unit,
    /// Finest fraction of an inch that is printed.
    pub fractions: u32,
    /// Whether 12 inches and more are printed in feet and inches.
    pub feet: bool,
    /// Thickness of the boards.
    pub thickness: Length,
    /// Gap between boards.
    pub gap: Length,
    /// Least bearing of a board's edge.
    pub least_bearing: Length,
    /// Least flange on which two rows of fasteners fit.
    pub least_flange: Length,
    /// The fastener.
    pub fastener: Fastener,
    /// Greatest spacing in edge rows.
    pub edge_spacing: Length,
    /// Greatest spacing in field rows.
    pub field_spacing: Length,
    /// Least distance from a fastener's middle to an edge of the board.
    pub edge_in_ply: Length,
    /// Least distance from a fastener's middle to an edge of the flange.
    pub edge_in_metal: Length,
    /// Distance from a row's first and last fastener to the board's end.
    pub end_distance: Length,
    /// Whether rows are staggered across seams.
    pub stagger: bool,
    /// Width that the blade turns to dust.
    pub kerf: Length,
    /// Strip taken off each edge of a sheet.
    pub trim: Length,
    /// The face that is up on the saw.
    pub face: Face,
    /// Paper of the job packet.
    pub paper: Paper,
}

impl Basis {
    pub(super) fn new(checked: &Checked) -> Basis {
        let settings = &checked.settings;
        let schedule = &settings.schedule;
        Basis {
            unit: settings.notation.unit,
            fractions: settings.notation.denominator,
            feet: settings.notation.feet,
            thickness: checked.thickness,
            gap: settings.rules.gap,
            least_bearing: settings.rules.least_bearing,
            least_flange: settings.rules.least_flange(),
            fastener: schedule.fastener.clone(),
            edge_spacing: schedule.edge_spacing,
            field_spacing: schedule.field_spacing,
            edge_in_ply: schedule.edge_in_ply,
            edge_in_metal: schedule.edge_in_metal,
            end_distance: schedule.end_distance,
            stagger: schedule.stagger,
            kerf: settings.saw.kerf,
            trim: settings.saw.trim,
            face: settings.shop.face,
            paper: settings.shop.paper,
        }
    }

    /// How a mass is written on the plan's sheets: in pounds beside inches, in kilograms beside millimetres.
    pub fn mass(&self, pounds: f64) -> String {
        if self.unit.is_imperial() {
            format!("{pounds:.0} lb")
        } else {
            format!("{:.0} kg", pounds * KILOGRAMS_PER_POUND)
        }
    }

    /// How lengths are written on the plan's sheets.
    pub fn notation(&self) -> Notation {
        Notation::new(self.unit).denominator(self.fractions).feet(self.feet)
    }
}
