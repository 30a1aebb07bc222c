//! Reads a call for seams.

use super::outline::outline;
use super::{ACCEPTED, whole};
use crate::error::{Error, Fault, Faults};
use crate::job::check::{Listing, Parts, calls};
use crate::job::read::at::{At, Listed, Object};
use crate::job::read::{Notes, deck, frame, specs, stock, text, tolerance};
use crate::job::{FasteningSpec, SawSpec, SeamsCall, ShopSpec, ToleranceSpec};
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::outline::{KeepClear, Opening, Outline};
use crate::stock::Sheet;
use serde_json::Value;

/// A call as far as it could be read.
struct Draft {
    frame: Option<frame::Read>,
    deck_length: Option<Length>,
    sheets: Option<Listed<Sheet>>,
    one_sheet: bool,
    outline: Option<Outline>,
    gap: Option<Length>,
    end_tolerance: Option<Length>,
    keep_clear: Listed<KeepClear>,
    openings: Listed<Opening>,
    fastening: FasteningSpec,
    saw: SawSpec,
    shop: ShopSpec,
    tolerance: Option<ToleranceSpec>,
    own_bearing: bool,
    unit: Unit,
}

pub(in crate::job) fn seams_call(text: &str) -> Result<SeamsCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    seams_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn seams_call_value(root: &Value, faults: Vec<Fault>) -> Result<SeamsCall, Error> {
    let (_, draft) = whole(root, faults, |fields, notes| Some(draft(fields, notes)), Draft::check)?;
    // unreachable: what is required and missing has left a fault.
    draft.call().ok_or_else(|| Fault::new(crate::error::Kind::MissingField, "", "The call is not complete.", "").into())
}

fn draft(fields: &mut Object<'_>, notes: &mut Notes) -> Draft {
    let frame = fields.required("frame", notes, frame::frame);
    let mut shaped = false;
    let outline = fields.optional("outline", notes, |at, notes| {
        shaped = true;
        outline(at, notes)
    });
    let deck_length = if shaped {
        fields.optional("deck_length", notes, At::length).or(outline.as_ref().map(Outline::length))
    } else {
        fields.required("deck_length", notes, At::length)
    };
    let mut one_sheet = false;
    let sheets = fields.required("sheet", notes, |at, notes| {
        one_sheet = !at.value.is_array();
        sheets(at, notes)
    });
    let gap = super::gap(fields, notes);
    let end_tolerance = fields.optional("end_tolerance", notes, At::length);
    let bearing = fields.optional("bearing", notes, At::length);
    let keep_clear = fields.defaulted("keep_clear", notes, |at, notes| at.list(notes, deck::zone));
    let openings = fields.defaulted("openings", notes, |at, notes| at.list(notes, deck::opening));
    let fastening = fields.optional("fastening", notes, specs::fastening).unwrap_or_default();
    let saw = fields.optional("saw", notes, specs::saw).unwrap_or_default();
    let mut shop = fields.optional("shop", notes, specs::shop).unwrap_or_default();
    if bearing.is_some() && shop.least_bearing.is_some() {
        fields.conflict(notes, ["shop/least_bearing", "bearing"], "The least bearing is given twice.");
    }
    shop.least_bearing = bearing.or(shop.least_bearing);
    shop.layouts = Some(fields.optional("best", notes, At::count).unwrap_or(1));
    let tolerance = fields.optional("tolerance", notes, tolerance::tolerance);
    let (own_bearing, unit) = (bearing.is_some(), notes.unit);
    Draft {
        frame,
        deck_length,
        sheets,
        one_sheet,
        outline,
        gap,
        end_tolerance,
        keep_clear,
        openings,
        fastening,
        saw,
        shop,
        tolerance,
        own_bearing,
        unit,
    }
}

/// One sheet, or a list of them; none where there are some and not one of them could be read.
fn sheets(at: &At<'_>, notes: &mut Notes) -> Option<Listed<Sheet>> {
    if !at.value.is_array() {
        return stock::any(at, notes).map(|sheet| Listed { items: vec![sheet], positions: vec![0] });
    }
    let before = notes.faults.len();
    let listed = at.list(notes, stock::any)?;
    (!listed.items.is_empty() || notes.faults.len() == before).then_some(listed)
}

impl Draft {
    fn check(&self) -> Result<(), Error> {
        let frame = self.frame.as_ref().filter(|read| read.usable);
        let parts = Parts {
            frame: frame.map(|read| (&read.spec, read.positions.as_slice())),
            openings: listing(&self.openings),
            keep_clear: listing(&self.keep_clear),
            stock: self.sheets.as_ref().map(listing),
            gap: self.gap,
            end_tolerance: self.end_tolerance,
            saw: &self.saw,
            tolerance: self.tolerance.as_ref(),
            ..Parts::bare(self.unit, &self.fastening, &self.shop)
        };
        let mut faults = Faults::new();
        with_json_form(JsonForm::Input(self.unit), || {
            calls::seams(&parts, self.outline.as_ref(), self.deck_length, &mut faults)
        });
        faults.finish().map_err(|error| error.map_pointers(|pointer| self.placed(pointer)))
    }

    /// Where in the call that stands which is checked as a part of a job.
    fn placed(&self, pointer: &str) -> Option<String> {
        match pointer {
            "/shop/least_bearing" if self.own_bearing => Some("/bearing".into()),
            "/shop/layouts" => Some("/best".into()),
            _ => {
                let sheet = if self.one_sheet { "/stock/0" } else { "/stock" };
                pointer.strip_prefix(sheet).map(|rest| format!("/sheet{rest}"))
            }
        }
    }

    fn call(self) -> Option<SeamsCall> {
        let call = SeamsCall::new(self.frame?.spec, self.deck_length?, self.sheets?.items);
        Some(SeamsCall {
            outline: self.outline,
            gap: self.gap,
            end_tolerance: self.end_tolerance,
            keep_clear: self.keep_clear.items,
            openings: self.openings.items,
            fastening: self.fastening,
            saw: self.saw,
            shop: self.shop,
            tolerance: self.tolerance,
            unit: self.unit,
            ..call
        })
    }
}

pub(super) fn listing<T>(listed: &Listed<T>) -> Listing<'_, T> {
    Listing { items: &listed.items, positions: &listed.positions }
}
