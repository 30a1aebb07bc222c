//! A load on a beam.

/// What sort of load it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum BeamLoadKind {
    /// Force per length: over the whole beam, or over `size` with its middle `at`.
    Uniform,
    /// A force spread evenly over `size` with its middle `at`.
    Patch,
    /// A force `at` one place.
    Point,
}

/// One load; downward is positive.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BeamLoad {
    /// What sort of load it is.
    pub kind: BeamLoadKind,
    /// Where its middle lies, from the left tip of the beam. None only for a uniform load over everything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<f64>,
    /// The length that it covers. None for a point load and for a uniform load over everything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<f64>,
    /// Force per length of a uniform load, force of the others.
    pub value: f64,
}

impl BeamLoad {
    /// The same force per length everywhere, overhangs included.
    pub fn uniform(value: f64) -> BeamLoad {
        BeamLoad { kind: BeamLoadKind::Uniform, at: None, size: None, value }
    }

    /// A force per length between two places.
    pub fn between(from: f64, to: f64, value: f64) -> BeamLoad {
        BeamLoad { kind: BeamLoadKind::Uniform, at: Some(from.midpoint(to)), size: Some(to - from), value }
    }

    /// A force spread evenly over a length.
    pub fn patch(at: f64, size: f64, value: f64) -> BeamLoad {
        BeamLoad { kind: BeamLoadKind::Patch, at: Some(at), size: Some(size), value }
    }

    /// A force at one place.
    pub fn point(at: f64, value: f64) -> BeamLoad {
        BeamLoad { kind: BeamLoadKind::Point, at: Some(at), size: None, value }
    }

    /// The stretch that the load covers on a beam of a length; both ends alike for a point.
    pub(super) fn stretch(&self, length: f64) -> (f64, f64) {
        match (self.kind, self.at, self.size) {
            (BeamLoadKind::Point, Some(at), _) => (at, at),
            (_, Some(at), Some(size)) => (at - size / 2.0, at + size / 2.0),
            _ => (0.0, length),
        }
    }

    /// Force per length; meaningless for a point.
    pub(super) fn intensity(&self) -> f64 {
        match (self.kind, self.size) {
            (BeamLoadKind::Patch, Some(size)) => self.value / size,
            _ => self.value,
        }
    }
}
