//! What every view has at hand: the plan, the way lengths are written, the paper.

use crate::draw::figure::{Paper, TextSize};
use crate::draw::page::Page;
use crate::draw::ruler::Ruler;
use crate::draw::sheet_frame::SheetFrame;
use crate::length::{Area, Length, Unit};
use crate::money::Figure;
use crate::plan::Plan;
use crate::published::{NEWTONS_PER_POUND, PASCALS_PER_PSF};

/// A plan on the drawing desk.
#[derive(Debug, Clone, Copy)]
pub(super) struct Desk<'a> {
    pub plan: &'a Plan,
    pub ruler: Ruler,
    pub paper: Paper,
}

impl<'a> Desk<'a> {
    pub(super) fn new(plan: &'a Plan, paper: Paper) -> Desk<'a> {
        Desk { plan, ruler: Ruler::new(plan.basis.notation()), paper }
    }

    /// A fresh sheet.
    pub(super) fn page(&self, view: impl Into<String>, title: impl Into<String>) -> Page {
        Page::new(view, SheetFrame::new(self.plan.job.name.clone(), title), self.paper)
    }

    /// True for a shop that measures in inches.
    pub(super) fn imperial(&self) -> bool {
        self.plan.basis.unit.is_imperial()
    }

    /// An area in square feet or square metres.
    pub(super) fn area(&self, area: Area) -> String {
        if self.imperial() {
            format!("{:.1} ft²", area.number(Unit::Foot))
        } else {
            format!("{:.2} m²", area.number(Unit::Metre))
        }
    }

    /// A length that is bought by the roll or the can, in feet or metres.
    pub(super) fn running_length(&self, length: Length) -> String {
        let unit = if self.imperial() { Unit::Foot } else { Unit::Metre };
        format!("{} {}", length.decimal_places(unit, 1), unit.symbol())
    }

    /// A volume of glue, in US gallons or litres: a US gallon is 3.785 411 784 litres.
    pub(super) fn volume(&self, gallons: Figure) -> String {
        const LITRES: f64 = 3.785_411_784;
        if self.imperial() { format!("{gallons} gal") } else { format!("{:.1} l", gallons.number() * LITRES) }
    }

    /// A mass in pounds or kilograms.
    pub(super) fn mass(&self, pounds: f64) -> String {
        self.plan.basis.mass(pounds)
    }

    /// A load by area, in pounds to the square foot or in kilopascals.
    pub(super) fn pressure(&self, psf: f64) -> String {
        if self.imperial() {
            format!("{}\u{a0}psf", three(psf))
        } else {
            format!("{:.2}\u{a0}kPa", psf * PASCALS_PER_PSF / 1000.0)
        }
    }

    /// A force in pounds or newtons.
    pub(super) fn force(&self, pounds: f64) -> String {
        if self.imperial() {
            format!("{}\u{a0}lb", three(pounds))
        } else {
            format!("{:.0}\u{a0}N", pounds * NEWTONS_PER_POUND)
        }
    }

    /// The size of figures in tables.
    pub(super) const FIGURES: TextSize = TextSize::FIGURE;
}

/// Whole from a hundred up, with a tenth below.
fn three(figure: f64) -> String {
    if figure >= 100.0 { format!("{figure:.0}") } else { format!("{figure:.1}") }
}

/// `1 cut`, `2 cuts`.
pub(super) fn count(number: usize, one: &str, many: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { many })
}

/// `a`, `a and b`, `a, b and c`.
pub(super) fn list<S: AsRef<str>>(items: &[S]) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [before @ .., last] => {
            let before: Vec<&str> = before.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", before.join(", "), last.as_ref())
        }
    }
}
