//! Openings in the deck, and zones that seams keep clear of.

use super::SlotEdge;
use crate::error::{Error, Fault, Faults, Kind};
use crate::geometry::{Path, Point};
use crate::length::Length;
use serde::Serialize;

/// A hole in the deck.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Opening {
    /// What the shop calls it.
    pub name: String,
    /// What it is for: hatch, wiring, fuel, pedestal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub purpose: Option<String>,
    /// Its shape and place.
    #[serde(flatten)]
    pub shape: OpeningShape,
    /// True where its edge is framed underneath, so that it may lie near a flange or cross an uncut member.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub framed: bool,
    /// The lid that is sawn for it; none: no lid.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lid: Option<Lid>,
    /// The edge of the deck to which it is open: a slot. None: it is closed all around.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slot: Option<SlotEdge>,
}

/// The lid of an opening: it lies in it with a clearance all around, or laps over its edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Lid {
    /// Space between its edge and the opening's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearance: Option<Length>,
    /// How far it lies over the opening's edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lap: Option<Length>,
    /// Layers that are glued up to it; none given: one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(range(min = 1, max = 4)))]
    pub layers: Option<u32>,
}

impl Lid {
    /// A lid in its opening, with a clearance all around.
    pub fn clearance(clearance: Length) -> Lid {
        Lid { clearance: Some(clearance), ..Lid::default() }
    }

    /// A lid that laps over its opening's edge.
    pub fn lap(lap: Length) -> Lid {
        Lid { lap: Some(lap), ..Lid::default() }
    }

    /// Glued up of so many layers.
    #[must_use]
    pub fn layers(mut self, layers: u32) -> Lid {
        self.layers = Some(layers);
        self
    }
}

/// Shape and place of an opening.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OpeningShape {
    /// A round hole.
    Round {
        /// Station of its middle.
        x: Length,
        /// Distance of its middle from the port edge.
        y: Length,
        /// Its diameter.
        diameter: Length,
    },
    /// A rectangular hole.
    Rectangle {
        /// Station of its fore edge.
        x: Length,
        /// Distance of its port edge from the deck's port edge.
        y: Length,
        /// Extent fore and aft.
        depth: Length,
        /// Extent athwart.
        width: Length,
        /// Radius of its corners.
        #[serde(default, skip_serializing_if = "Length::is_zero_ref")]
        corner_radius: Length,
    },
}

impl Opening {
    /// An opening of a shape.
    pub fn new(name: impl Into<String>, shape: OpeningShape) -> Opening {
        Opening { name: name.into(), purpose: None, shape, framed: false, lid: None, slot: None }
    }

    /// What it is for.
    #[must_use]
    pub fn purpose(mut self, purpose: impl Into<String>) -> Opening {
        self.purpose = Some(purpose.into());
        self
    }

    /// Framed underneath, or not.
    #[must_use]
    pub fn framed(mut self, framed: bool) -> Opening {
        self.framed = framed;
        self
    }

    /// With a lid.
    #[must_use]
    pub fn lid(mut self, lid: Lid) -> Opening {
        self.lid = Some(lid);
        self
    }

    /// Open to an edge of the deck.
    #[must_use]
    pub fn slot(mut self, edge: SlotEdge) -> Opening {
        self.slot = Some(edge);
        self
    }

    /// The same opening moved aft and to starboard.
    #[must_use]
    pub fn moved(&self, aft: Length, starboard: Length) -> Opening {
        let shape = match self.shape {
            OpeningShape::Round { x, y, diameter } => OpeningShape::Round { x: x + aft, y: y + starboard, diameter },
            OpeningShape::Rectangle { x, y, depth, width, corner_radius } => {
                OpeningShape::Rectangle { x: x + aft, y: y + starboard, depth, width, corner_radius }
            }
        };
        Opening { shape, ..self.clone() }
    }

    /// Its edge as a closed path.
    pub fn path(&self) -> Path<()> {
        match self.shape {
            OpeningShape::Round { x, y, diameter } => Path::circle(Point::new(x, y), diameter / 2),
            OpeningShape::Rectangle { x, y, depth, width, corner_radius } => {
                Path::rectangle(Point::new(x, y), Point::new(x + depth, y + width), corner_radius)
            }
        }
    }

    /// Checks its own measures; pointers are relative to the opening.
    ///
    /// # Errors
    /// A size of zero or less, or a corner radius above half of either side.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::new();
        if let Some(layers) = self.lid.and_then(|lid| lid.layers).filter(|layers| !(1..=4).contains(layers)) {
            let message = format!("{layers} layers are out of range.");
            let fault = Fault::new(Kind::OutOfRange, layers.to_string(), message, "There are 1 to 4 layers.");
            faults.push(fault.within("layers").within("lid"));
        }
        let mut positive = |field: [&str; 2], size: Length| {
            if size <= Length::ZERO {
                let kind = if size.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
                let message = format!("{size} is no size of an opening.");
                let fault = Fault::new(kind, size.to_string(), message, "A size is above zero.");
                faults.push(fault.within(field[1]).within(field[0]));
            }
        };
        match self.shape {
            OpeningShape::Round { diameter, .. } => positive(["round", "diameter"], diameter),
            OpeningShape::Rectangle { depth, width, corner_radius, .. } => {
                positive(["rectangle", "depth"], depth);
                positive(["rectangle", "width"], width);
                let most = depth.min(width) / 2;
                if corner_radius.is_negative() || corner_radius > most {
                    let fault = Fault::new(
                        Kind::OpeningCornerTooLarge,
                        corner_radius.to_string(),
                        format!("A corner radius of {corner_radius} does not fit an opening of {depth} by {width}."),
                        format!("It lies between 0 and {most}."),
                    );
                    faults.push(fault.within("corner_radius").within("rectangle"));
                }
            }
        }
        faults.finish()
    }
}

/// A zone that no seam may cross: under a gate, a ladder, a pedestal, a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct KeepClear {
    /// What it is kept clear for.
    pub name: String,
    /// Station where it starts.
    pub from: Length,
    /// Station where it ends.
    pub to: Length,
}

impl KeepClear {
    /// A zone between two stations.
    pub fn new(name: impl Into<String>, from: Length, to: Length) -> KeepClear {
        KeepClear { name: name.into(), from, to }
    }
}
