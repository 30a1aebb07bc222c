//! The seams of a deck, asked for in one document.

use crate::error::{Error, Fault, Faults, Kind};
use crate::frame::{Frame, FrameSpec};
use crate::job::boards::Question;
use crate::job::check::{Listing, Parts, calls};
use crate::job::settings::{Settings, asked};
use crate::job::{FasteningSpec, SawSpec, ShopSpec, ToleranceSpec, read, texts};
use crate::length::{JsonForm, Length, Notation, Unit, with_json_form};
use crate::outline::{KeepClear, Opening, Outline};
use crate::seams::Seams;
use crate::stock::Sheet;

/// Where a deck splits into boards, asked for in one document.
///
/// In JSON: `frame` and `sheet` are required, and `deck_length` where there is no `outline`. A sheet is the job file's, its
/// thickness left out if one likes; several stand in a list. `bearing` is the least bearing of a board's edge on a flange;
/// `best` is how many layouts are wanted, 1 where it is left out. `gap` is 0 where it is left out. Everything else,
/// `end_tolerance`, `keep_clear`, `openings`, `fastening`, `saw`, `shop` and `tolerance`, is the job file's field of that name, with
/// the job's defaults, which are also those for a `gap` or `bearing` of null.
///
/// `outline` is a job's `deck`, or a plan's. With it sheets that do not reach across the deck are left out, and the length
/// of seams counts; without it every sheet is taken to reach across with its length.
///
/// # Examples
/// ```
/// use deck_core::job::SeamsCall;
/// let call = SeamsCall::from_json(r#"{
///     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
///     "deck_length": "20 ft", "sheet": {"label": "4 x 8", "length": 96, "width": 48}
/// }"#)?;
/// let stations: Vec<String> = call.seams()?.layouts[0].seams.iter().map(|seam| seam.fore.to_string()).collect();
/// assert_eq!(stations, ["48 in", "96 in", "144 in", "192 in"]);
/// # Ok::<(), deck_core::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct SeamsCall {
    /// The cross members.
    pub frame: FrameSpec,
    /// Length over all.
    pub deck_length: Length,
    /// The sheets.
    pub sheets: Vec<Sheet>,
    /// The outline, where it is known.
    pub outline: Option<Outline>,
    /// Gap between boards; none: a job's default.
    pub gap: Option<Length>,
    /// How much shorter than the deck the boards may finish at the stern.
    pub end_tolerance: Option<Length>,
    /// Zones that no seam may cross.
    pub keep_clear: Vec<KeepClear>,
    /// Openings, which no seam crosses.
    pub openings: Vec<Opening>,
    /// The fastener, and the distances it keeps.
    pub fastening: FasteningSpec,
    /// What is trimmed off the sheets.
    pub saw: SawSpec,
    /// Least bearing, widths of boards, how many layouts are wanted, and how lengths are written.
    pub shop: ShopSpec,
    /// Errors, against which seams keep the greatest margin where it says so.
    pub tolerance: Option<ToleranceSpec>,
    /// The unit of bare numbers and of the answer.
    pub unit: Unit,
}

impl SeamsCall {
    /// The best layout without a gap, in inches, all else by default.
    pub fn new(frame: FrameSpec, deck_length: Length, sheets: Vec<Sheet>) -> SeamsCall {
        SeamsCall {
            frame,
            deck_length,
            sheets,
            outline: None,
            gap: Some(Length::ZERO),
            end_tolerance: None,
            keep_clear: Vec::new(),
            openings: Vec::new(),
            fastening: FasteningSpec::new(),
            saw: SawSpec::new(),
            shop: ShopSpec::new().layouts(1),
            tolerance: None,
            unit: Unit::Inch,
        }
    }

    /// Reads a call.
    ///
    /// # Errors
    /// Everything that is wrong with it, in the order in which it stands there, as in a job.
    pub fn from_json(text: &str) -> Result<SeamsCall, Error> {
        read::seams_call(text)
    }

    /// Reads a call from JSON that is parsed already.
    ///
    /// # Errors
    /// As [`SeamsCall::from_json`].
    pub fn from_value(value: &serde_json::Value) -> Result<SeamsCall, Error> {
        read::seams_call_value(value, Vec::new())
    }

    /// How lengths are written beside the answer's numbers.
    pub fn notation(&self) -> Notation {
        asked::notation(self.unit, &self.shop)
    }

    /// Finds the layouts, or the reason why there is none.
    ///
    /// # Errors
    /// Everything that does not fit together, sheets under `/stock`.
    pub fn seams(&self) -> Result<Seams, Error> {
        let (frame, settings) = with_json_form(JsonForm::Input(self.unit), || self.checked())?;
        let question = Question {
            frame: &frame,
            deck_length: self.deck_length,
            outline: self.outline.as_ref(),
            stock: &self.sheets,
            openings: &self.openings,
            keep_clear: &self.keep_clear,
            settings: &settings,
        };
        Ok(question.answer())
    }

    /// The answer as a document: `layouts` (as in a plan), `no_layout` and `proven`.
    ///
    /// # Errors
    /// As [`SeamsCall::seams`].
    pub fn document(&self) -> Result<serde_json::Value, Error> {
        Ok(texts::document(&self.seams()?, &self.notation()))
    }

    fn checked(&self) -> Result<(Frame, Settings), Error> {
        let places = |count: usize| (0..count).collect::<Vec<usize>>();
        let (members, sheets) = (places(self.frame.members.len()), places(self.sheets.len()));
        let (openings, zones) = (places(self.openings.len()), places(self.keep_clear.len()));
        let parts = Parts {
            frame: Some((&self.frame, &members)),
            openings: Listing { items: &self.openings, positions: &openings },
            keep_clear: Listing { items: &self.keep_clear, positions: &zones },
            stock: Some(Listing { items: &self.sheets, positions: &sheets }),
            gap: self.gap,
            end_tolerance: self.end_tolerance,
            saw: &self.saw,
            tolerance: self.tolerance.as_ref(),
            ..Parts::bare(self.unit, &self.fastening, &self.shop)
        };
        let mut faults = Faults::new();
        let checked = calls::seams(&parts, self.outline.as_ref(), Some(self.deck_length), &mut faults);
        faults.finish()?;
        // unreachable: a frame that is not there has left a fault.
        checked.ok_or_else(|| Fault::new(Kind::MissingField, "", "The call is not complete.", "").into())
    }
}
