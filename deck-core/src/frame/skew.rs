//! A member that does not lie square to the boat, or that is bent.
//!
//! Its station is read at the deck's centreline and at both sides. Between the three it is taken as straight.
//!
//! ```text
//!   port edge        centreline        starboard edge
//!   ●────────                             ────────●      out of square: the starboard end lies further aft
//!            ────────────●────────────
//! ```

use super::CrossMember;
use crate::length::Length;
use serde::{Deserialize, Serialize};

/// Where a member's ends lie against its middle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Skew {
    /// How far aft of the reading at the centreline the member lies at the deck's port edge.
    pub port: Length,
    /// The same at the starboard edge.
    pub starboard: Length,
    /// How much further aft the starboard end lies than the port end: out of square by so much over the beam.
    pub out: Length,
    /// How far aft of the member's middle the chord between its ends passes: bent by so much.
    pub bend: Length,
}

impl Skew {
    /// From three readings of one kind.
    pub fn new(centre: Length, port: Length, starboard: Length) -> Skew {
        let (port, starboard) = (port - centre, starboard - centre);
        let out = starboard - port;
        // The chord's port end lies half of `out` forward of its middle.
        Skew { port, starboard, out, bend: port + out / 2 }
    }
}

impl CrossMember {
    /// The part of the flange that lies under a straight edge all over the beam, as stations at the centreline: of an edge
    /// athwart, or of one along the chord between the member's ends. Where nothing does, the second is not aft of the
    /// first.
    ///
    /// # Examples
    /// An eighth forward at the port edge and an eighth aft at the starboard edge cost an edge athwart a quarter of the
    /// flange, and one along the member nothing.
    /// ```
    /// use deck_core::frame::{Frame, FrameSpec};
    /// use deck_core::Length;
    /// let inches = Length::inches;
    /// let mut spec = FrameSpec::centred([inches(0), inches(24)], inches(2));
    /// spec.members[1].station_port = Some("23-7/8 in".parse()?);
    /// spec.members[1].station_starboard = Some("24-1/8 in".parse()?);
    /// let frame = Frame::new(&spec)?;
    /// let member = &frame.members()[1];
    /// assert_eq!(member.under_edge(false), ("23-1/8 in".parse()?, "24-7/8 in".parse()?));
    /// assert_eq!(member.under_edge(true), (inches(23), inches(25)));
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn under_edge(&self, along: bool) -> (Length, Length) {
        let Some(skew) = self.skew else { return (self.fore, self.aft) };
        let (foremost, aftmost) =
            if along { (skew.bend, skew.bend) } else { (skew.port.min(skew.starboard), skew.port.max(skew.starboard)) };
        (self.fore + aftmost.max(Length::ZERO), self.aft + foremost.min(Length::ZERO))
    }

    /// The flange's fore and aft edge at the deck's port edge, its centreline and its starboard edge.
    pub fn edges(&self) -> [(Length, Length); 3] {
        let moved = |by: Length| (self.fore + by, self.aft + by);
        let (port, starboard) = self.skew.map_or_else(Default::default, |skew| (skew.port, skew.starboard));
        [moved(port), moved(Length::ZERO), moved(starboard)]
    }
}
