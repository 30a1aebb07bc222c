//! Series solutions of orthotropic plates against the elements.
//!
//! Navier's double sine series: four edges simply supported, a patch anywhere. Levy's single series: two opposite edges
//! simply supported (members), the others free, as a board's ends are. Both after Timoshenko and Woinowsky-Krieger (1959),
//! articles 30 and 86; the free edges' conditions are worked out here.

use deck_core::span::{PlateLoad, PlateProblem, PlateSupport, Rigidity};
use std::f64::consts::PI;

/// Deflection and moments.
type Three = [f64; 3];

/// Navier: a force spread over a rectangle of `size` in the middle `at`, looked at in `x`, `y`.
fn navier([a, b]: [f64; 2], rigidity: &Rigidity, at: [f64; 2], size: [f64; 2], force: f64, [x, y]: [f64; 2]) -> Three {
    let Rigidity { dx, dy, torsion, poisson, .. } = *rigidity;
    let coupling = dx * poisson[1];
    let mut sum = [0.0; 3];
    // The mean of sin over the patch: its middle's, less what the width takes.
    let mean = |alpha: f64, at: f64, size: f64| {
        let half = alpha * size / 2.0;
        (alpha * at).sin() * if half > 0.0 { half.sin() / half } else { 1.0 }
    };
    for m in 1..=400 {
        let alpha = f64::from(m) * PI / a;
        let along = mean(alpha, at[0], size[0]) * (alpha * x).sin();
        for n in 1..=400 {
            let beta = f64::from(n) * PI / b;
            let stiff = dx * alpha.powi(4) + 2.0 * torsion * (alpha * beta).powi(2) + dy * beta.powi(4);
            let w = 4.0 * force / (a * b) * along * mean(beta, at[1], size[1]) * (beta * y).sin() / stiff;
            sum[0] += w;
            sum[1] += w * (dx * alpha * alpha + coupling * beta * beta);
            sum[2] += w * (dy * beta * beta + coupling * alpha * alpha);
        }
    }
    sum
}

/// A complex number.
#[derive(Clone, Copy)]
struct Complex(f64, f64);

impl Complex {
    fn times(self, other: Complex) -> Complex {
        Complex(self.0 * other.0 - self.1 * other.1, self.0 * other.1 + self.1 * other.0)
    }

    fn exp(self) -> Complex {
        Complex(self.0.exp() * self.1.cos(), self.0.exp() * self.1.sin())
    }
}

/// The root `s` of `dy s⁴ - 2 H α² s² + dx α⁴` in the first quadrant, for `H² < dx dy`.
fn root(rigidity: &Rigidity, alpha: f64) -> Complex {
    let Rigidity { dx, dy, torsion, .. } = *rigidity;
    assert!(torsion * torsion < dx * dy);
    // s² = α² (H ± i √(dx dy - H²)) / dy: its size is α² √(dx/dy).
    let (real, size) = (alpha * alpha * torsion / dy, alpha * alpha * (dx / dy).sqrt());
    Complex(size.midpoint(real).sqrt(), size.midpoint(-real).sqrt())
}

/// The `k`-th derivative of `cosh(s y)`, over `exp(Re s · half)` lest it outgrow a float.
fn even(s: Complex, y: f64, half: f64, k: u32) -> Complex {
    let up = Complex(s.0 * (y - half), s.1 * y).exp();
    let down = Complex(-s.0 * (y + half), -s.1 * y).exp();
    let sign = if k.is_multiple_of(2) { 1.0 } else { -1.0 };
    let sum = Complex(up.0.midpoint(sign * down.0), up.1.midpoint(sign * down.1));
    (0..k).fold(sum, |value, _| value.times(s))
}

/// Levy: edges `x = 0` and `x = a` simply supported, edges `y = ±b/2` free, uniform load. `y` counts from the middle.
fn levy([a, b]: [f64; 2], rigidity: &Rigidity, load: f64, [x, y]: [f64; 2]) -> Three {
    let Rigidity { dx, dy, torsion, poisson, .. } = *rigidity;
    let coupling = dx * poisson[1];
    let half = b / 2.0;
    let mut sum = [0.0; 3];
    for m in (1..400).step_by(2) {
        let alpha = f64::from(m) * PI / a;
        let s = root(rigidity, alpha);
        let particular = 4.0 * load / (f64::from(m) * PI) / (dx * alpha.powi(4));
        let parts = |y: f64, k: u32| {
            let value = even(s, y, half, k);
            [value.0, value.1]
        };
        // No moment and no Kirchhoff shear at the edge: dy Y'' - c α² Y = 0, dy Y''' - (2 H - c) α² Y' = 0.
        let [f0, f1, f2, f3] = [0, 1, 2, 3].map(|k| parts(half, k));
        let moment = [0, 1].map(|i| dy * f2[i] - coupling * alpha * alpha * f0[i]);
        let shear = [0, 1].map(|i| dy * f3[i] - (2.0 * torsion - coupling) * alpha * alpha * f1[i]);
        let right = coupling * alpha * alpha * particular;
        let determinant = moment[0] * shear[1] - moment[1] * shear[0];
        let factors = [right * shear[1] / determinant, -right * shear[0] / determinant];
        let value = |k: u32| {
            let parts = parts(y, k);
            factors[0] * parts[0] + factors[1] * parts[1]
        };
        let (w, bend) = (particular + value(0), value(2));
        let sine = (alpha * x).sin();
        sum[0] += w * sine;
        sum[1] += (dx * alpha * alpha * w - coupling * bend) * sine;
        sum[2] += (coupling * alpha * alpha * w - dy * bend) * sine;
    }
    sum
}

fn near(ours: f64, theirs: f64, slack: f64, what: &str) {
    assert!((ours - theirs).abs() <= slack, "{what}: {ours}, by the series {theirs}");
}

#[test]
fn patches_on_four_edges() {
    let rigidity = Rigidity::new(36_000.0, 12_000.0, 9_000.0).poisson([0.1, 0.1 * 12.0 / 36.0]);
    let sides = [40.0, 24.0];
    let problem = PlateProblem::new(sides[0], sides[1], rigidity, &PlateSupport::edges(sides[0], sides[1]));
    for (at, size) in [([20.0, 12.0], [4.0, 4.0]), ([9.0, 7.5], [3.0, 5.0]), ([36.0, 20.5], [6.0, 2.0])] {
        let plate = problem.solve(&[PlateLoad::patch(at, size, 200.0)]).unwrap();
        let most = navier(sides, &rigidity, at, size, 200.0, at);
        for look in [at, [20.0, 12.0], [30.0, 5.0], [6.0, 18.0]] {
            let [w, x, y] = navier(sides, &rigidity, at, size, 200.0, look);
            let ours = plate.at(look[0], look[1]).unwrap();
            near(ours.deflection, w, 1e-3 * most[0], "deflection");
            near(ours.moment_x, x, 1.2e-2 * most[1], "moment along x");
            near(ours.moment_y, y, 1.2e-2 * most[2], "moment along y");
        }
    }
}

/// The series says how many digits the rows of the convergence test have.
#[test]
fn a_square_plate() {
    let rigidity = Rigidity::isotropic(1.0, 0.3);
    let uniform = navier([1.0, 1.0], &rigidity, [0.5; 2], [1.0; 2], 1.0, [0.5; 2]);
    near(uniform[0], 0.004_062_352_66, 2e-11, "uniform");
    let point = navier([1.0, 1.0], &rigidity, [0.5; 2], [0.0; 2], 1.0, [0.5; 2]);
    // What is left out of the double sum after 400 terms is about 8e-8.
    near(point[0], 0.011_600_837_5, 2e-7, "point");
}

#[test]
fn free_ends() {
    for (sides, rigidity) in [
        ([16.0, 48.0], Rigidity::new(29_583.3, 9_583.33, 8_000.0)),
        ([24.0, 20.0], Rigidity::new(9_583.33, 29_583.3, 12_000.0).poisson([0.05, 0.154_35])),
        ([12.0, 48.0], Rigidity::new(20_000.0, 30_000.0, 2_000.0).poisson([0.06, 0.09])),
    ] {
        let [a, b] = sides;
        let members = [PlateSupport::across(0.0), PlateSupport::across(a)];
        let problem = PlateProblem::new(a, b, rigidity, &members);
        let plate = problem.solve(&[PlateLoad::uniform(0.7)]).unwrap();
        let [w, x, _] = levy(sides, &rigidity, 0.7, [a / 2.0, 0.0]);
        for look in [[0.5, 0.5], [0.5, 1.0], [0.25, 0.9], [0.3, 0.0]] {
            let look = [look[0] * a, look[1] * b];
            let [deflection, moment_x, moment_y] = levy(sides, &rigidity, 0.7, [look[0], look[1] - b / 2.0]);
            let ours = plate.at(look[0], look[1]).unwrap();
            near(ours.deflection, deflection, 1e-4 * w, "deflection");
            near(ours.moment_x, moment_x, 2e-3 * x, "moment along x");
            near(ours.moment_y, moment_y, 4e-3 * x, "moment along y");
        }
    }
}
