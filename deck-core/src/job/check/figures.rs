//! Exact figures, amounts and three-point estimates of the sections on work and money.

use crate::error::{Fault, Faults, Kind};
use crate::length::{Length, Notation};
use crate::money::{Figure, Money, ThreePoint};

/// The most of hours, minutes and counts; see the schema.
const MOST: i64 = 1_000_000;

/// Faults of a section, each told by its field.
pub(super) struct Section<'f> {
    pub(super) notation: Notation,
    pub(super) faults: &'f mut Faults,
}

impl Section<'_> {
    pub(super) fn refuse(&mut self, fault: Fault, field: &str) {
        self.faults.push(fault.within(field));
    }

    pub(super) fn between(&mut self, field: &str, figure: Option<Figure>, least: i64, most: i64) {
        if let Some(figure) = figure.filter(|figure| *figure < Figure::of(least) || *figure > Figure::of(most)) {
            let accepted = format!("A number from {least} to {most} is accepted.");
            let message = format!("{figure} is out of range.");
            self.refuse(Fault::new(Kind::OutOfRange, figure.to_string(), message, accepted), field);
        }
    }

    pub(super) fn amount(&mut self, field: &str, amount: Option<Money>) {
        if let Some(amount) = amount.filter(|amount| *amount < Money::ZERO) {
            let message = format!("{amount} is below zero.");
            self.refuse(
                Fault::new(Kind::MoneyNegative, amount.to_string(), message, "Zero or more is accepted."),
                field,
            );
        }
    }

    pub(super) fn count(&mut self, field: &str, count: Option<u32>, least: u32, most: u32) {
        if let Some(count) = count.filter(|count| !(least..=most).contains(count)) {
            let accepted = format!("It is a whole number from {least} to {most}.");
            let message = format!("{count} is out of range.");
            self.refuse(Fault::new(Kind::OutOfRange, count.to_string(), message, accepted), field);
        }
    }

    /// A length above zero.
    pub(super) fn positive(&mut self, field: &str, length: Option<Length>) {
        if let Some(length) = length.filter(|length| *length <= Length::ZERO) {
            let kind = if length.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
            let text = self.notation.text(length);
            let message = format!("{text} is no size.");
            self.refuse(Fault::new(kind, text, message, "More than zero is accepted."), field);
        }
    }

    /// A length of zero or more.
    pub(super) fn not_negative(&mut self, field: &str, length: Option<Length>) {
        if length.is_some_and(Length::is_negative) {
            self.positive(field, length);
        }
    }

    pub(super) fn three_point(&mut self, field: &str, points: Option<ThreePoint>) {
        let Some(points) = points else { return };
        let mut own = Faults::new();
        let mut inner = Section { notation: self.notation, faults: &mut own };
        for (name, figure) in [("low", points.low), ("likely", points.likely), ("high", points.high)] {
            inner.between(name, Some(figure), 0, MOST);
        }
        if own.is_empty() && !points.is_in_order() {
            let text = format!("{}, {}, {}", points.low, points.likely, points.high);
            let message = format!("{text} are not in order.");
            own.push(Fault::new(
                Kind::ThreePointOrder,
                text,
                message,
                "low, likely, high: none below the one before it.",
            ));
        }
        if let Err(error) = own.finish() {
            self.faults.absorb(error.within(field));
        }
    }
}
