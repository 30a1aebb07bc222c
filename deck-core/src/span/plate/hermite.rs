//! Cubics on an interval, told by value and slope at both ends, and functionals of the piecewise cubics of one side.

/// Four shape functions at a place of an interval of length `h`, differentiated `order` times; `t` runs from 0 to 1.
pub(super) fn shape(t: f64, h: f64, order: u8) -> [f64; 4] {
    match order {
        0 => {
            let u = 1.0 - t;
            [u * u * (1.0 + 2.0 * t), h * t * u * u, t * t * (3.0 - 2.0 * t), -h * t * t * u]
        }
        1 => {
            let bump = 6.0 * t * (1.0 - t) / h;
            [-bump, (1.0 - t) * (1.0 - 3.0 * t), bump, t * (3.0 * t - 2.0)]
        }
        _ => {
            let turn = (12.0 * t - 6.0) / (h * h);
            [turn, (6.0 * t - 4.0) / h, -turn, (6.0 * t - 2.0) / h]
        }
    }
}

/// Integrals over an interval of products of shape functions, row `i`, column `j`.
pub(super) struct Products {
    /// `Nᵢ Nⱼ`.
    pub(super) plain: [[f64; 4]; 4],
    /// `Nᵢ' Nⱼ'`.
    pub(super) slopes: [[f64; 4]; 4],
    /// `Nᵢ'' Nⱼ''`.
    pub(super) bends: [[f64; 4]; 4],
    /// `Nᵢ'' Nⱼ`.
    pub(super) mixed: [[f64; 4]; 4],
}

impl Products {
    pub(super) fn new(h: f64) -> Products {
        let scale = |factor: f64, [a, b, c, d, e, f]: [f64; 6]| {
            // Symmetric under exchange of the ends, with the sign of the slopes turned.
            let (b, d, e, f) = (b * h, d * h, e * h * h, f * h * h);
            [[a, b, c, d], [b, e, -d, f], [c, -d, a, -b], [d, f, -b, e]].map(|row| row.map(|value| value * factor))
        };
        let slopes = scale(1.0 / (30.0 * h), [36.0, 3.0, -36.0, 3.0, 4.0, -1.0]);
        // By parts: the ends' terms less the product of slopes.
        let mut mixed = slopes.map(|row| row.map(|value| -value));
        mixed[1][0] -= 1.0;
        mixed[3][2] += 1.0;
        Products {
            plain: scale(h / 420.0, [156.0, 22.0, 54.0, -13.0, 4.0, -3.0]),
            slopes,
            bends: scale(1.0 / (h * h * h), [12.0, 6.0, -12.0, 6.0, 4.0, 2.0]),
            mixed,
        }
    }
}

/// A weighted sum of consecutive unknowns of one side; each line of the mesh has two, value and slope.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    /// First line of the mesh.
    pub(super) first: usize,
    /// Weights of value and slope, line by line.
    pub(super) weights: Vec<[f64; 2]>,
}

impl Row {
    /// The sum of nothing.
    fn empty(first: usize, lines: usize) -> Row {
        Row { first, weights: vec![[0.0; 2]; lines] }
    }

    /// The sum for the shape that is 1 everywhere: what an integral measures.
    pub(super) fn total(&self) -> f64 {
        self.weights.iter().map(|weights| weights[0]).sum()
    }

    /// Adds the four terms of the interval that begins at a line.
    fn add(&mut self, line: usize, terms: [f64; 4], factor: f64) {
        let at = line - self.first;
        for (weights, terms) in self.weights[at..].iter_mut().zip([[terms[0], terms[1]], [terms[2], terms[3]]]) {
            weights[0] += terms[0] * factor;
            weights[1] += terms[1] * factor;
        }
    }
}

/// Places, in halves of an interval from its middle, where the second derivative is more accurate than elsewhere:
/// Gauss's two points, ±1/√3.
const GAUSS: f64 = 0.577_350_269_189_625_8;

/// Gauss's two points of an interval, each counting half of its length.
fn gauss(from: f64, to: f64) -> [f64; 2] {
    let (middle, half) = (from.midpoint(to), (to - from) / 2.0);
    [middle - GAUSS * half, middle + GAUSS * half]
}

/// The lines of the mesh along one side of the plate.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Side {
    /// Where they lie, in order, the edges included: two at least.
    pub(super) lines: Vec<f64>,
    /// Those where a support may put a kink into the moments; edges included.
    pub(super) kinks: Vec<usize>,
}

impl Side {
    /// The interval that holds a place.
    pub(super) fn interval(&self, x: f64) -> usize {
        self.lines.partition_point(|line| *line <= x).saturating_sub(1).min(self.lines.len() - 2)
    }

    pub(super) fn length(&self, interval: usize) -> f64 {
        self.lines[interval + 1] - self.lines[interval]
    }

    /// Value or derivative at a place of an interval.
    fn terms(&self, interval: usize, x: f64, order: u8) -> [f64; 4] {
        let h = self.length(interval);
        shape((x - self.lines[interval]) / h, h, order)
    }

    /// Value (order 0) or slope (order 1) at a place.
    pub(super) fn at(&self, interval: usize, x: f64, order: u8) -> Row {
        let mut row = Row::empty(interval, 2);
        row.add(interval, self.terms(interval, x, order), 1.0);
        row
    }

    /// Integral of the values from one place to another.
    pub(super) fn integral(&self, from: f64, to: f64) -> Row {
        let (first, last) = (self.interval(from), self.interval(to));
        let mut row = Row::empty(first, last - first + 2);
        for interval in first..=last {
            let (from, to) = (from.max(self.lines[interval]), to.min(self.lines[interval + 1]));
            if to > from {
                // Two points integrate cubics exactly.
                for x in gauss(from, to) {
                    row.add(interval, self.terms(interval, x, 0), (to - from) / 2.0);
                }
            }
        }
        row
    }

    /// Second derivative at a place (order 2), or the third (order 3).
    ///
    /// Within an interval the second derivative of a cubic is straight and off by the square of its length; at Gauss's
    /// points it is far better. The curve through those of the interval and of its neighbour, as far as no kink lies
    /// between, is what is told.
    pub(super) fn bend(&self, interval: usize, x: f64, order: u8) -> Row {
        let (first, last) = self.neighbours(interval, x);
        let mut row = Row::empty(first, last - first + 2);
        let pair = |interval: usize| gauss(self.lines[interval], self.lines[interval + 1]);
        let ([a, b], [c, d]) = (pair(first), pair(last));
        let (points, count) = ([a, b, c, d], if first == last { 2 } else { 4 });
        for (index, &point) in points[..count].iter().enumerate() {
            let interval = if index < 2 { first } else { last };
            row.add(interval, self.terms(interval, point, 2), lagrange(&points[..count], index, x, order == 3));
        }
        row
    }

    /// The interval and the neighbour that is nearer to the place, if no kink lies between.
    fn neighbours(&self, interval: usize, x: f64) -> (usize, usize) {
        let before = interval > 0 && !self.kinks.contains(&interval);
        let after = interval + 2 < self.lines.len() && !self.kinks.contains(&(interval + 1));
        let nearer_before = x < self.lines[interval].midpoint(self.lines[interval + 1]);
        match (before, after) {
            (true, true) if nearer_before => (interval - 1, interval),
            (true, false) => (interval - 1, interval),
            (_, true) => (interval, interval + 1),
            (false, false) => (interval, interval),
        }
    }
}

/// The factor of one of the points in the polynomial through them, at `x`; or that polynomial's slope there.
fn lagrange(points: &[f64], own: usize, x: f64, slope: bool) -> f64 {
    let product = |at: f64, skip: usize| -> f64 {
        let others = points.iter().enumerate().filter(|(index, _)| *index != own && *index != skip);
        others.map(|(_, other)| at - other).product()
    };
    let above = if slope {
        (0..points.len()).filter(|&skip| skip != own).map(|skip| product(x, skip)).sum()
    } else {
        product(x, own)
    };
    above / product(points[own], own)
}
