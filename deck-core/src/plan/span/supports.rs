//! From a board and the frame to what it bears on.
//!
//! ```text
//!   seam            member           seam
//!    |[==           [====]          ==]|      [ ]: the part of a flange under this board
//!    +---------------------------------+
//!       |---- bay ---|---- bay ----|          spacing: middle to middle; clear: edge to edge
//! ```

use super::found::{Bearing, SpanBay};
use crate::frame::Frame;
use crate::length::Length;
use crate::panels::Panel;

/// A board's bearings, and what follows from them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Supports {
    pub(super) bearings: Vec<Bearing>,
    pub(super) bays: Vec<SpanBay>,
    pub(super) overhangs: [Length; 2],
}

impl Supports {
    pub(super) fn new(panel: &Panel, frame: &Frame) -> Supports {
        let bounds = panel.bounds;
        let bearings: Vec<Bearing> = frame
            .members()
            .iter()
            .filter_map(|member| {
                let (fore, aft) = (member.fore.max(bounds.fore), member.aft.min(bounds.aft));
                let port = member.port_end.unwrap_or(bounds.port).max(bounds.port);
                let starboard = member.starboard_end.unwrap_or(bounds.starboard).min(bounds.starboard);
                let bears = aft > fore && starboard > port;
                bears.then(|| Bearing { member: member.number, fore, aft, width: aft - fore, port, starboard })
            })
            .collect();
        let bays = bearings.windows(2).filter_map(|pair| bay(pair.first()?, pair.get(1)?)).collect();
        let past = |bearing: Option<&Bearing>, edge: fn(&Bearing) -> Length, end: Length| {
            let beyond = |bearing: &Bearing| (bearing.middle() - end).abs();
            bearing.filter(|bearing| edge(bearing) != end).map_or(Length::ZERO, beyond)
        };
        let overhangs = [
            past(bearings.first(), |bearing| bearing.fore, bounds.fore),
            past(bearings.last(), |bearing| bearing.aft, bounds.aft),
        ];
        Supports { bearings, bays, overhangs }
    }

    /// The narrowest bearing.
    pub(super) fn narrowest(&self) -> Length {
        self.bearings.iter().map(|bearing| bearing.width).min().unwrap_or_default()
    }

    /// Equal spans that the tables' equations take: one, two, or three and more.
    pub(super) fn count(&self) -> u32 {
        match self.bays.len() {
            0 | 1 => 1,
            2 => 2,
            _ => 3,
        }
    }
}

fn bay(fore: &Bearing, aft: &Bearing) -> Option<SpanBay> {
    let (spacing, clear) = (aft.middle() - fore.middle(), aft.fore - fore.aft);
    // Flanges lie apart, so this is above zero; what is not is no bay.
    (clear > Length::ZERO).then_some(SpanBay { fore_member: fore.member, aft_member: aft.member, spacing, clear })
}

impl Bearing {
    /// Station of its middle.
    pub fn middle(&self) -> Length {
        self.fore.midpoint(self.aft)
    }
}

impl SpanBay {
    /// The members that it lies between.
    pub fn name(&self) -> String {
        format!("M{} to M{}", self.fore_member, self.aft_member)
    }
}
