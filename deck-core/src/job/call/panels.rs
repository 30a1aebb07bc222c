//! The panels of a deck, asked for in one document.

use crate::error::{Error, Faults};
use crate::job::check::{Listing, Parts, calls};
use crate::job::settings::asked;
use crate::job::{FasteningSpec, ShopSpec, read, texts};
use crate::length::{JsonForm, Length, Notation, Unit, with_json_form};
use crate::outline::{Opening, Outline};
use crate::panels::{Panel, SeamLine, panels_between};

/// The boards that seams leave of an outline, in their true shape, asked for in one document.
///
/// In JSON: `outline` and `seams` are required. An outline is a job's `deck`, or a plan's. Seams are what a
/// [`SeamsCall`](super::SeamsCall) is answered with, of which the first layout is taken; or a layout; or a list of seams;
/// or a list of stations, each where a board ends, with `gap` aft of it (0 where it is left out, a job's default where it is
/// null). The last board ends at `finish`: where it is left out, where the layout does, or at the stern. `openings` are the
/// job's; no seam may cross them. Without a `thickness` the panels have no weight. `shop` says how lengths are written.
///
/// # Examples
/// ```
/// use deck_core::job::PanelsCall;
/// let call = PanelsCall::from_json(r#"{
///     "outline": {"length": 92, "beam": 96, "bow": {"radius": 12}}, "seams": [47.9375], "gap": "1/8", "thickness": "3/4"
/// }"#)?;
/// let widths: Vec<String> = call.panels()?.iter().map(|panel| panel.width.to_string()).collect();
/// assert_eq!(widths, ["47.9375 in", "43.9375 in"]);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PanelsCall {
    /// The outline.
    pub outline: Outline,
    /// The seams, from the bow aft.
    pub seams: Vec<SeamLine>,
    /// Where the last board ends; none: at the stern.
    pub finish: Option<Length>,
    /// The openings.
    pub openings: Vec<Opening>,
    /// Thickness of the boards, where it is known.
    pub thickness: Option<Length>,
    /// How lengths are written.
    pub shop: ShopSpec,
    /// The unit of bare numbers and of the answer.
    pub unit: Unit,
}

impl PanelsCall {
    /// Without openings or a thickness, in inches.
    pub fn new(outline: Outline, seams: Vec<SeamLine>) -> PanelsCall {
        PanelsCall {
            outline,
            seams,
            finish: None,
            openings: Vec::new(),
            thickness: None,
            shop: ShopSpec::new(),
            unit: Unit::Inch,
        }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there, as in a job; seams that do not lie one behind
    /// the other on the deck, or that cross an opening; an answer without a layout.
    pub fn from_json(text: &str) -> Result<PanelsCall, Error> {
        read::panels_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`PanelsCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<PanelsCall, Error> {
        read::panels_call_value(value, Vec::new())
    }

    /// How lengths are written beside the answer's numbers.
    pub fn notation(&self) -> Notation {
        asked::notation(self.unit, &self.shop)
    }

    /// Cuts the panels.
    ///
    /// # Errors
    /// Everything that does not fit together.
    pub fn panels(&self) -> Result<Vec<Panel>, Error> {
        with_json_form(JsonForm::Input(self.unit), || self.check())?;
        let finish = self.finish.unwrap_or(self.outline.length());
        let outline = calls::slotted(&self.outline, &self.openings);
        Ok(panels_between(&outline, &self.seams, finish, &self.openings, self.thickness))
    }

    /// The answer as a document: a list of panels, as in a plan.
    ///
    /// # Errors
    /// As [`PanelsCall::panels`].
    pub fn document(&self) -> Result<serde_json::Value, Error> {
        Ok(texts::document(&self.panels()?, &self.notation()))
    }

    fn check(&self) -> Result<(), Error> {
        let places = |count: usize| (0..count).collect::<Vec<usize>>();
        let (openings, seams) = (places(self.openings.len()), places(self.seams.len()));
        let fastening = FasteningSpec::new();
        let parts = Parts {
            openings: Listing { items: &self.openings, positions: &openings },
            ..Parts::bare(self.unit, &fastening, &self.shop)
        };
        let seams = Listing { items: &self.seams, positions: &seams };
        let mut faults = Faults::new();
        calls::panels(&parts, Some(&self.outline), seams, (self.finish, self.thickness), &mut faults);
        faults.finish()
    }
}
