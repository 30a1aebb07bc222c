//! A division with its sheets, and how two of them compare.

use super::found::{Arrangement, ArrangementFigures, SeamPricing};
use super::told;
use crate::arrange::{ArrangementKind, Division};
use crate::error::Error;
use crate::fasteners::fasteners;
use crate::job::Checked;
use crate::length::{Area, Length};
use crate::nest::{Cost, Nest};
use crate::panels::Panel;
use crate::plan::span;
use crate::seams::{SeamLayout, Seams};
use crate::stock::Sheet;
use std::cmp::Ordering;

/// A way to lay the boards, nested.
pub(super) struct Priced {
    pub(super) kind: ArrangementKind,
    pub(super) seams: Seams,
    /// None where boards lie athwart in one piece.
    pub(super) division: Option<Division>,
    pub(super) boards: Vec<Panel>,
    pub(super) nest: Nest,
    pub(super) tried: usize,
    pub(super) utilisation: Option<f64>,
    /// What came of choosing its seams by the nest.
    pub(super) pricing: Option<SeamPricing>,
}

impl Priced {
    pub(super) fn layout(&self) -> Option<&SeamLayout> {
        self.seams.layouts.first()
    }

    /// Better first: parts without a sheet, seams short of flange, zones crossed, cost, sheets, boards, length of seams,
    /// length of blocks, strength used up, and the simpler kind.
    pub(super) fn compare(&self, other: &Priced) -> Ordering {
        self.weights()
            .cmp(&other.weights())
            .then_with(|| match (self.utilisation, other.utilisation) {
                (Some(one), Some(other)) => one.total_cmp(&other),
                _ => Ordering::Equal,
            })
            .then_with(|| self.kind.cmp(&other.kind))
    }

    fn weights(&self) -> [i128; 8] {
        let whole = |count: usize| i128::try_from(count).unwrap_or(i128::MAX);
        let length = |length: Length| i128::from(length.nanometres());
        [
            i128::from(self.unplaced()),
            whole(self.layout().map_or(0, |layout| layout.cost.short_seams)),
            whole(self.division.as_ref().map_or(0, |division| division.zones.len())),
            units(self.nest.cost),
            i128::from(self.nest.sheet_count),
            whole(self.boards.len()),
            length(self.seam_length()),
            length(self.division.as_ref().map_or(Length::ZERO, Division::block_length)),
        ]
    }

    fn unplaced(&self) -> u32 {
        self.nest.unplaced.iter().map(|part| part.count).sum()
    }

    fn seam_length(&self) -> Length {
        let athwart: Length =
            self.layout().into_iter().flat_map(|layout| &layout.seams).filter_map(|seam| seam.length).sum();
        athwart + self.division.as_ref().map_or(Length::ZERO, Division::joint_length)
    }

    pub(super) fn row(&self, checked: &Checked, rank: usize, built: bool) -> Arrangement {
        let division = self.division.as_ref();
        Arrangement {
            kind: self.kind,
            name: self.kind.to_string(),
            rank: Some(rank),
            built,
            detail: Some(told::detail(checked, self)),
            figures: Some(ArrangementFigures {
                unplaced: self.unplaced(),
                short_seams: self.layout().map_or(0, |layout| layout.cost.short_seams),
                zones_crossed: division.map_or(0, |division| division.zones.len()),
                cost: match self.nest.cost {
                    Cost::Money(money) => Some(money),
                    Cost::Area(_) => None,
                },
                sheet_area: sheet_area(&self.nest, &checked.stock),
                sheets: self.nest.sheet_count,
                boards: self.boards.len(),
                seam_length: self.seam_length(),
                joint_length: division.map_or(Length::ZERO, Division::joint_length),
                blocks: division.map_or(0, |division| division.blocks.len()),
                blocking_length: division.map_or(Length::ZERO, Division::block_length),
                utilisation: self.utilisation,
                tried: self.tried,
                proven: division.map_or(self.seams.proven, |division| division.proven),
            }),
            no_layout: None,
            bounds: self.boards.iter().map(|board| board.bounds).collect(),
        }
    }
}

/// A cost as a whole number of its smallest units; all nests of a job count in the same.
pub(super) fn units(cost: Cost) -> i128 {
    match cost {
        Cost::Money(money) => money.ten_thousandths(),
        Cost::Area(area) => area.square_nanometres(),
    }
}

/// Area of the sheets that are bought.
fn sheet_area(nest: &Nest, stock: &[Sheet]) -> Area {
    let bought = nest.sheets.iter().filter(|sheet| sheet.inside.is_none());
    let sizes = bought.filter_map(|sheet| stock.iter().find(|other| other.label == sheet.stock && !other.offcut));
    let area = |sheet: &Sheet| Area::of(sheet.length, sheet.width).square_nanometres();
    Area::from_square_nanometres(sizes.map(area).sum())
}

/// The most that a board is used up; none where the job does not say of what it is, or what stands on it.
pub(super) fn utilisation(checked: &Checked, boards: &[Panel]) -> Result<Option<f64>, Error> {
    if checked.span.panel.is_none() {
        return Ok(None);
    }
    // Loads without a force use up nothing, and screws are no board's strength.
    let mut asked = checked.clone();
    let points = asked.span.points.unwrap_or_default().into_iter().filter(|point| point.force.is_some());
    (asked.span.points, asked.span.fasteners) = (Some(points.collect()), None);
    let rows = fasteners(boards, &checked.frame, &checked.outline, &checked.settings.schedule);
    let found = span::span(&asked, boards, &rows)?;
    let used = found.panels.iter().flat_map(|panel| {
        let uniform = panel.table.as_ref().or(panel.beam.as_ref()).and_then(|check| check.utilisation);
        uniform.into_iter().chain(panel.points.iter().filter_map(|point| point.utilisation))
    });
    Ok(used.reduce(f64::max))
}
