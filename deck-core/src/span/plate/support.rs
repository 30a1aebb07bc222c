//! What holds a plate.

/// Where a support runs.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case", tag = "kind")]
pub enum Place {
    /// Across the plate, at a distance `x` along its length.
    Across {
        /// Distance along the length.
        x: f64,
        /// Where it begins and ends along the width; None: from edge to edge.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        between: Option<[f64; 2]>,
    },
    /// Along the plate, at a distance `y` along its width.
    Along {
        /// Distance along the width.
        y: f64,
        /// Where it begins and ends along the length; None: from end to end.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        between: Option<[f64; 2]>,
    },
    /// A single point, as a screw or a post.
    Point {
        /// Distances along the length and the width.
        at: [f64; 2],
    },
}

/// A support: the plate cannot move up or down there. It holds both ways, as a fastened board is held.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, serde::Deserialize)]
#[non_exhaustive]
pub struct PlateSupport {
    /// Where it runs.
    #[serde(flatten)]
    pub place: Place,
    /// True where the plate cannot turn about the line either. Means nothing for a point.
    #[serde(default)]
    pub clamped: bool,
}

impl PlateSupport {
    /// A line across the plate, from edge to edge.
    pub fn across(x: f64) -> PlateSupport {
        PlateSupport { place: Place::Across { x, between: None }, clamped: false }
    }

    /// A line along the plate, from end to end.
    pub fn along(y: f64) -> PlateSupport {
        PlateSupport { place: Place::Along { y, between: None }, clamped: false }
    }

    /// A point.
    pub fn point(at: [f64; 2]) -> PlateSupport {
        PlateSupport { place: Place::Point { at }, clamped: false }
    }

    /// A support of any sort.
    pub fn at(place: Place, clamped: bool) -> PlateSupport {
        PlateSupport { place, clamped }
    }

    /// All four edges of a plate, simply supported.
    pub fn edges(length: f64, width: f64) -> [PlateSupport; 4] {
        [Self::across(0.0), Self::across(length), Self::along(0.0), Self::along(width)]
    }

    /// The same line from one place to another only. A point stays what it is.
    #[must_use]
    pub fn between(mut self, from: f64, to: f64) -> PlateSupport {
        match &mut self.place {
            Place::Across { between, .. } | Place::Along { between, .. } => *between = Some([from, to]),
            Place::Point { .. } => {}
        }
        self
    }

    /// The same line, keeping the plate from turning.
    #[must_use]
    pub fn clamped(mut self) -> PlateSupport {
        self.clamped = true;
        self
    }

    /// Where it runs along the two sides of a plate: from and to, alike across a line.
    pub(super) fn stretches(&self, sides: [f64; 2]) -> [[f64; 2]; 2] {
        match self.place {
            Place::Across { x, between } => [[x, x], between.unwrap_or([0.0, sides[1]])],
            Place::Along { y, between } => [between.unwrap_or([0.0, sides[0]]), [y, y]],
            Place::Point { at } => [[at[0], at[0]], [at[1], at[1]]],
        }
    }

    /// The side along which the line stands still: 0 for a line across, 1 for a line along.
    pub(super) fn normal(&self) -> Option<usize> {
        match self.place {
            Place::Across { .. } => Some(0),
            Place::Along { .. } => Some(1),
            Place::Point { .. } => None,
        }
    }
}
