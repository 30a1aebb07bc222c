//! Cross members as they were measured.

use crate::length::Length;
use serde::{Deserialize, Serialize};

/// Cross members, measured one by one or at a regular spacing.
///
/// What is given for the whole frame holds for each member that does not say otherwise.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Default)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct FrameSpec {
    /// Profile family of the members.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<Profile>,
    /// Width of the flat top that boards bear on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flange: Option<Length>,
    /// The way the flange lies from the web.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub faces: Option<Facing>,
    /// What the stations are measured to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_to: Option<MeasuredTo>,
    /// Wall thickness of the flange.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<Length>,
    /// The members, from the bow aft.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub members: Vec<MemberSpec>,
    /// Members at a regular spacing, in place of the list.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub regular: Option<Regular>,
    /// Members as the job's survey found them, in place of the list.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<MembersFrom>,
}

/// What a job takes its members from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum MembersFrom {
    /// From its survey.
    Survey,
}

/// Members at a regular spacing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Regular {
    /// Station of the first member.
    pub first: Length,
    /// Station of the last member.
    pub last: Length,
    /// Distance from member to member; the last bay may be shorter.
    pub spacing: Length,
}

/// One cross member as it was measured. What it does not say, the frame says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct MemberSpec {
    /// The tape reading, aft of the bow reference edge; with readings at both sides, that at the deck's centreline.
    pub station: Length,
    /// The reading at the deck's port edge, of a member out of square or bent. Left out: as at the centreline.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub station_port: Option<Length>,
    /// The reading at the deck's starboard edge; it goes with that at the port edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub station_starboard: Option<Length>,
    /// What the reading is to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_to: Option<MeasuredTo>,
    /// Profile family.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<Profile>,
    /// Width of the flat top that boards bear on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flange: Option<Length>,
    /// The way the flange lies from the web.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub faces: Option<Facing>,
    /// Wall thickness of the flange.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<Length>,
    /// Distance of its port end from the port edge; none: it reaches the deck edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub port_end: Option<Length>,
    /// Distance of its starboard end from the port edge; none: it reaches the deck edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub starboard_end: Option<Length>,
    /// What the strip-out showed.
    #[serde(default, skip_serializing_if = "Condition::is_sound")]
    pub condition: Condition,
}

/// The shape of a cross member's section.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Profile {
    /// A web with both flanges to one side.
    #[serde(rename = "C")]
    C,
    /// A web with the top flange to one side and the bottom flange to the other.
    #[serde(rename = "Z")]
    Z,
    /// As Z, with curved corners.
    #[serde(rename = "S")]
    S,
    /// A web in the middle of its flanges.
    #[serde(rename = "I")]
    I,
    /// A flat top with two webs and feet.
    Hat,
    /// A closed box.
    Box,
}

impl Profile {
    /// True where the flange lies to one side of the web.
    pub fn is_one_sided(self) -> bool {
        matches!(self, Profile::C | Profile::Z | Profile::S)
    }
}

/// The way a flange lies from its web.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Facing {
    /// Towards the bow.
    Fore,
    /// Towards the stern.
    Aft,
}

/// What a tape reading of a member is to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum MeasuredTo {
    /// The web: on a C, Z or S its flat back, on the others its middle.
    Web,
    /// The flange's fore edge.
    ForeEdge,
    /// The flange's aft edge.
    AftEdge,
    /// The middle of the flange.
    Centre,
}

/// What the strip-out showed of a member.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Condition {
    /// Nothing wrong with it.
    #[default]
    Sound,
    /// Cut, for a cable or a pipe.
    Cut,
    /// Corroded.
    Corroded,
    /// Bent.
    Bent,
}

impl Condition {
    fn is_sound(&self) -> bool {
        *self == Condition::Sound
    }
}

impl MemberSpec {
    /// A member at a station; the frame says the rest.
    pub fn new(station: Length) -> MemberSpec {
        MemberSpec {
            station,
            station_port: None,
            station_starboard: None,
            measured_to: None,
            profile: None,
            flange: None,
            faces: None,
            wall: None,
            port_end: None,
            starboard_end: None,
            condition: Condition::Sound,
        }
    }

    /// With readings at the deck's port and starboard edge.
    #[must_use]
    pub fn sides(mut self, port: Length, starboard: Length) -> MemberSpec {
        self.station_port = Some(port);
        self.station_starboard = Some(starboard);
        self
    }

    /// With its own flange width.
    #[must_use]
    pub fn flange(mut self, flange: Length) -> MemberSpec {
        self.flange = Some(flange);
        self
    }

    /// With its own ends, both from the port edge.
    #[must_use]
    pub fn ends(mut self, port: Length, starboard: Length) -> MemberSpec {
        self.port_end = Some(port);
        self.starboard_end = Some(starboard);
        self
    }

    /// In another condition than sound.
    #[must_use]
    pub fn condition(mut self, condition: Condition) -> MemberSpec {
        self.condition = condition;
        self
    }
}

impl FrameSpec {
    /// Members with stations at the middle of flanges of one width.
    pub fn centred(stations: impl IntoIterator<Item = Length>, flange: Length) -> FrameSpec {
        FrameSpec {
            measured_to: Some(MeasuredTo::Centre),
            flange: Some(flange),
            members: stations.into_iter().map(MemberSpec::new).collect(),
            ..FrameSpec::default()
        }
    }

    /// Members at a regular spacing, stations at the middle of flanges of one width.
    pub fn regular(first: Length, last: Length, spacing: Length, flange: Length) -> FrameSpec {
        FrameSpec {
            measured_to: Some(MeasuredTo::Centre),
            flange: Some(flange),
            regular: Some(Regular { first, last, spacing }),
            ..FrameSpec::default()
        }
    }

    /// With a wall thickness for all members.
    #[must_use]
    pub fn wall(mut self, wall: Length) -> FrameSpec {
        self.wall = Some(wall);
        self
    }

    /// With a profile family for all members, and the way its flange lies.
    #[must_use]
    pub fn profile(mut self, profile: Profile, faces: Option<Facing>) -> FrameSpec {
        self.profile = Some(profile);
        self.faces = faces;
        self
    }

    /// With what the stations are measured to.
    #[must_use]
    pub fn measured_to(mut self, measured_to: MeasuredTo) -> FrameSpec {
        self.measured_to = Some(measured_to);
        self
    }
}
