//! A load on a plate.

/// What sort of load it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlateLoadKind {
    /// Force per area: over the whole plate, or over the rectangle `size` with its middle `at`.
    Uniform,
    /// A force spread evenly over the rectangle `size` with its middle `at`: a heel, a pedestal's base, a jack's pad.
    Patch,
    /// Force per length along a line with its middle `at`; one of the two numbers of `size` is zero.
    Line,
    /// A force `at` one place. The plate has no finite moment under it: use a patch where moments matter.
    Point,
}

/// One load; downward is positive.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlateLoad {
    /// What sort of load it is.
    pub kind: PlateLoadKind,
    /// Where its middle lies, from the corner of the plate: along the length, along the width. None only for a uniform
    /// load over everything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<[f64; 2]>,
    /// What it covers along the length and along the width. None for a point and for a uniform load over everything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<[f64; 2]>,
    /// Force per area of a uniform load, force per length of a line, force of the others.
    pub value: f64,
}

impl PlateLoad {
    /// The same force per area everywhere.
    pub fn uniform(value: f64) -> PlateLoad {
        PlateLoad { kind: PlateLoadKind::Uniform, at: None, size: None, value }
    }

    /// A force per area over a rectangle.
    pub fn area(at: [f64; 2], size: [f64; 2], value: f64) -> PlateLoad {
        PlateLoad { kind: PlateLoadKind::Uniform, at: Some(at), size: Some(size), value }
    }

    /// A force spread evenly over a rectangle.
    pub fn patch(at: [f64; 2], size: [f64; 2], value: f64) -> PlateLoad {
        PlateLoad { kind: PlateLoadKind::Patch, at: Some(at), size: Some(size), value }
    }

    /// A force per length along a line; one of the two sizes is zero.
    pub fn line(at: [f64; 2], size: [f64; 2], value: f64) -> PlateLoad {
        PlateLoad { kind: PlateLoadKind::Line, at: Some(at), size: Some(size), value }
    }

    /// A force at one place.
    pub fn point(at: [f64; 2], value: f64) -> PlateLoad {
        PlateLoad { kind: PlateLoadKind::Point, at: Some(at), size: None, value }
    }

    /// What is covered along one side of a plate, from and to; alike where it is a point or a line across.
    pub(super) fn stretch(&self, axis: usize, side: f64) -> (f64, f64) {
        match (self.kind, self.at, self.size) {
            (PlateLoadKind::Point, Some(at), _) => (at[axis], at[axis]),
            (_, Some(at), Some(size)) => (at[axis] - size[axis] / 2.0, at[axis] + size[axis] / 2.0),
            _ => (0.0, side),
        }
    }

    /// Force per area, per length, or force: what multiplies the measure of what is covered.
    pub(super) fn intensity(&self) -> f64 {
        match (self.kind, self.size) {
            (PlateLoadKind::Patch, Some([length, width])) => self.value / (length * width),
            _ => self.value,
        }
    }
}
