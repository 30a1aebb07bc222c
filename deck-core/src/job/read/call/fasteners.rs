//! Reads a call for fasteners.

use super::outline::{outline, sound};
use super::seams::listing;
use super::{ACCEPTED, whole};
use crate::error::{Error, Fault, Faults, Kind};
use crate::job::check::{Parts, calls};
use crate::job::read::at::{At, Listed, Object, shown};
use crate::job::read::{Notes, frame, specs, text};
use crate::job::{FastenersCall, FasteningSpec, ShopSpec};
use crate::length::{JsonForm, Unit, with_json_form};
use crate::outline::Outline;
use crate::panels::Panel;
use serde::Deserialize;
use serde_json::Value;

/// A call as far as it could be read.
struct Draft {
    panels: Option<Listed<Panel>>,
    frame: Option<frame::Read>,
    outline: Option<Outline>,
    fastening: FasteningSpec,
    shop: ShopSpec,
    unit: Unit,
}

pub(in crate::job) fn fasteners_call(text: &str) -> Result<FastenersCall, Error> {
    let (value, twice) = text::parse(text, ACCEPTED)?;
    fasteners_call_value(&value, twice)
}

/// `faults` are those that were found in parsing.
pub(in crate::job) fn fasteners_call_value(root: &Value, faults: Vec<Fault>) -> Result<FastenersCall, Error> {
    let (_, draft) = whole(root, faults, |fields, notes| Some(draft(fields, notes)), Draft::check)?;
    // unreachable: what is required and missing has left a fault.
    draft.call().ok_or_else(|| Fault::new(Kind::MissingField, "", "The call is not complete.", "").into())
}

fn draft(fields: &mut Object<'_>, notes: &mut Notes) -> Draft {
    Draft {
        panels: fields.required("panels", notes, |at, notes| at.list(notes, panel)),
        frame: fields.required("frame", notes, frame::frame),
        outline: fields.optional("outline", notes, outline),
        fastening: fields.optional("fastening", notes, specs::fastening).unwrap_or_default(),
        shop: fields.optional("shop", notes, specs::shop).unwrap_or_default(),
        unit: notes.unit,
    }
}

/// A panel as it was written, its edges gone over: nobody knows what hands it went through.
fn panel(at: &At<'_>, notes: &mut Notes) -> Option<Panel> {
    const ACCEPTED: &str = "A panel is one that was answered to a call for panels, or a plan's.";
    if !at.value.is_object() {
        at.refuse(notes, Kind::WrongType, format!("{} is no panel.", shown(at.value)), ACCEPTED);
        return None;
    }
    let read = with_json_form(JsonForm::Number(notes.unit), || Panel::deserialize(at.value));
    let message = match read.map(gone_over) {
        Ok(Some(panel)) => return Some(panel),
        Ok(None) => "Its sides do not go once around it, or around an opening in it, within its bounds.".to_owned(),
        Err(error) => format!("This is no panel: {error}."),
    };
    at.refuse(notes, Kind::WrongType, message, ACCEPTED);
    None
}

/// The panel, if its edges and the rectangles around them are those of one that was cut.
fn gone_over(mut panel: Panel) -> Option<Panel> {
    panel.shape = sound(&panel.shape).filter(|shape| shape.bounds() == panel.bounds)?;
    for opening in &mut panel.openings {
        opening.shape = sound(&opening.shape).filter(|shape| shape.bounds() == opening.bounds)?;
    }
    Some(panel)
}

impl Draft {
    fn check(&self) -> Result<(), Error> {
        let frame = self.frame.as_ref().filter(|read| read.usable);
        let frame = frame.map(|read| (&read.spec, read.positions.as_slice()));
        let parts = Parts { frame, ..Parts::bare(self.unit, &self.fastening, &self.shop) };
        let none = Listed::default();
        let panels = listing(self.panels.as_ref().unwrap_or(&none));
        let mut faults = Faults::new();
        with_json_form(JsonForm::Input(self.unit), || {
            calls::fasteners(&parts, panels, self.outline.as_ref(), &mut faults)
        });
        faults.finish()
    }

    fn call(self) -> Option<FastenersCall> {
        let call = FastenersCall::new(self.panels?.items, self.frame?.spec);
        let Draft { outline, fastening, shop, unit, .. } = Draft { panels: None, frame: None, ..self };
        Some(FastenersCall { outline, fastening, shop, unit, ..call })
    }
}
