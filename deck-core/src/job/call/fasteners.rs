//! The fasteners of a deck, asked for in one document.

use crate::error::{Error, Fault, Faults, Kind};
use crate::fasteners::{Fastening, fasteners, fasteners_of_panels};
use crate::frame::{Frame, FrameSpec};
use crate::job::check::{Listing, Parts, calls};
use crate::job::settings::{Settings, asked};
use crate::job::{FasteningSpec, ShopSpec, read, texts};
use crate::length::{JsonForm, Notation, Unit, with_json_form};
use crate::outline::Outline;
use crate::panels::Panel;

/// Where every fastener goes, asked for in one document.
///
/// In JSON: `panels` and `frame` are required. Panels are what a [`PanelsCall`](super::PanelsCall) is answered with, or a
/// plan's. `fastening` is the job's, with the job's defaults. `outline`, a job's `deck` or a plan's, may be left out where all
/// panels of the deck are given. `shop` says how lengths are written.
///
/// # Examples
/// ```
/// use deck_core::job::{FastenersCall, PanelsCall};
/// let panels = PanelsCall::from_json(r#"{"outline": {"length": 240, "beam": 96}, "seams": [48, 96, 144, 192]}"#)?;
/// let call = FastenersCall::from_json(&format!(r#"{{
///     "panels": {},
///     "frame": {{"measured_to": "centre", "flange": 2, "regular": {{"first": 0, "last": 240, "spacing": 24}}}},
///     "fastening": {{"edge_spacing": 8, "field_spacing": 8, "end_distance": 1}}
/// }}"#, panels.document()?))?;
/// assert_eq!(call.fasteners()?.count, 195);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct FastenersCall {
    /// The panels.
    pub panels: Vec<Panel>,
    /// The cross members.
    pub frame: FrameSpec,
    /// The outline; none: that of the panels.
    pub outline: Option<Outline>,
    /// The fastener, and the distances it keeps.
    pub fastening: FasteningSpec,
    /// How lengths are written.
    pub shop: ShopSpec,
    /// The unit of bare numbers and of the answer.
    pub unit: Unit,
}

impl FastenersCall {
    /// By the job's defaults, in inches.
    pub fn new(panels: Vec<Panel>, frame: FrameSpec) -> FastenersCall {
        FastenersCall {
            panels,
            frame,
            outline: None,
            fastening: FasteningSpec::new(),
            shop: ShopSpec::new(),
            unit: Unit::Inch,
        }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there, as in a job; and what is no panel.
    pub fn from_json(text: &str) -> Result<FastenersCall, Error> {
        read::fasteners_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`FastenersCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<FastenersCall, Error> {
        read::fasteners_call_value(value, Vec::new())
    }

    /// How lengths are written beside the answer's numbers.
    pub fn notation(&self) -> Notation {
        asked::notation(self.unit, &self.shop)
    }

    /// Places the fasteners.
    ///
    /// # Errors
    /// Everything that does not fit together.
    pub fn fasteners(&self) -> Result<Fastening, Error> {
        let (frame, settings) = with_json_form(JsonForm::Input(self.unit), || self.checked())?;
        Ok(match &self.outline {
            Some(outline) => fasteners(&self.panels, &frame, outline, &settings.schedule),
            None => fasteners_of_panels(&self.panels, &frame, &settings.schedule),
        })
    }

    /// The answer as a document: `rows` and counts, as a plan's fasteners.
    ///
    /// # Errors
    /// As [`FastenersCall::fasteners`].
    pub fn document(&self) -> Result<serde_json::Value, Error> {
        Ok(texts::document(&self.fasteners()?, &self.notation()))
    }

    fn checked(&self) -> Result<(Frame, Settings), Error> {
        let places = |count: usize| (0..count).collect::<Vec<usize>>();
        let (members, panels) = (places(self.frame.members.len()), places(self.panels.len()));
        let parts =
            Parts { frame: Some((&self.frame, &members)), ..Parts::bare(self.unit, &self.fastening, &self.shop) };
        let panels = Listing { items: &self.panels, positions: &panels };
        let mut faults = Faults::new();
        let checked = calls::fasteners(&parts, panels, self.outline.as_ref(), &mut faults);
        faults.finish()?;
        // unreachable: a frame that is not there has left a fault.
        checked.ok_or_else(|| Fault::new(Kind::MissingField, "", "The call is not complete.", "").into())
    }
}
