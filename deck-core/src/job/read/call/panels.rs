//! Reads a call for panels.

use super::outline::outline;
use super::seam_lines::{Lines, lines};
use super::seams::listing;
use super::{ACCEPTED, whole};
use crate::error::{Error, Fault, Faults, Kind};
use crate::job::check::{Listing, Parts, calls};
use crate::job::read::at::{At, Listed, Object};
use crate::job::read::{Notes, deck, specs, text};
use crate::job::{FasteningSpec, PanelsCall, ShopSpec};
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::outline::{Opening, Outline};
use crate::published::defaults;
use serde_json::Value;

/// A call as far as it could be read.
struct Draft {
    outline: Option<Outline>,
    seams: Option<Lines>,
    finish: Option<Length>,
    own_finish: bool,
    openings: Listed<Opening>,
    thickness: Option<Length>,
    shop: ShopSpec,
    unit: Unit,
}

pub(in crate::job) fn panels_call(text: &str) -> Result<PanelsCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    panels_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn panels_call_value(root: &Value, faults: Vec<Fault>) -> Result<PanelsCall, Error> {
    let (_, draft) = whole(root, faults, |fields, notes| Some(draft(fields, notes)), Draft::check)?;
    // unreachable: what is required and missing has left a fault.
    draft.call().ok_or_else(|| Fault::new(Kind::MissingField, "", "The call is not complete.", "").into())
}

fn draft(fields: &mut Object<'_>, notes: &mut Notes) -> Draft {
    let outline = fields.required("outline", notes, outline);
    let gap = super::gap(fields, notes).unwrap_or(defaults::GAP.value);
    if gap.is_negative() {
        let fault = Fault::new(Kind::LengthNegative, "", "A gap is not below zero.", "Zero or more is accepted.");
        notes.faults.push(fault.at("/gap"));
    }
    let seams = fields.required("seams", notes, |at, notes| lines(at, notes, gap));
    let finish = fields.optional("finish", notes, At::length);
    let openings = fields.defaulted("openings", notes, |at, notes| at.list(notes, deck::opening));
    let thickness = fields.optional("thickness", notes, At::length);
    let shop = fields.optional("shop", notes, specs::shop).unwrap_or_default();
    let told = seams.as_ref().and_then(|seams| seams.finish);
    Draft {
        outline,
        seams,
        finish: finish.or(told),
        own_finish: finish.is_some(),
        openings,
        thickness,
        shop,
        unit: notes.unit,
    }
}

impl Draft {
    fn check(&self) -> Result<(), Error> {
        let fastening = FasteningSpec::new();
        let parts = Parts { openings: listing(&self.openings), ..Parts::bare(self.unit, &fastening, &self.shop) };
        // Where a seam could not be read, nothing can be said of the others' order.
        let seams = self.seams.as_ref().filter(|seams| seams.whole);
        let outline = self.outline.as_ref();
        let lines = seams.map_or(Listing { items: &[], positions: &[] }, |seams| listing(&seams.listed));
        let finish = self.finish.filter(|_| seams.is_some());
        let mut faults = Faults::new();
        with_json_form(JsonForm::Input(self.unit), || {
            calls::panels(&parts, outline, lines, (finish, self.thickness), &mut faults);
        });
        faults.finish().map_err(|error| error.map_pointers(|pointer| self.placed(pointer)))
    }

    /// Where in the call the seams stand.
    fn placed(&self, pointer: &str) -> Option<String> {
        let list = &self.seams.as_ref()?.pointer;
        if pointer == "/finish" && !self.own_finish {
            return list.strip_suffix("/seams").map(|layout| format!("{layout}/finish"));
        }
        pointer.strip_prefix("/seams").map(|rest| format!("{list}{rest}"))
    }

    fn call(self) -> Option<PanelsCall> {
        let call = PanelsCall::new(self.outline?, self.seams?.listed.items);
        Some(PanelsCall {
            finish: self.finish,
            openings: self.openings.items,
            thickness: self.thickness,
            shop: self.shop,
            unit: self.unit,
            ..call
        })
    }
}
