//! The closed form of a sum of hours against drawing many jobs by chance, with a fixed seed.
//!
//! Each task is a beta distribution on its own range with the mean and the deviation of the three-point rule; tasks that
//! share all are drawn in step, the quickest of one with the quickest of the others.

use deck_core::money::ThreePoint;
use deck_core::published::{LABOUR_STEPS, LabourStep};
use deck_core::quote::{Distribution, deviation, percentiles};

const SEED: u64 = 0x9e37_79b9_7f4a_7c15;
const JOBS: usize = 60_000;

/// xorshift64* (Marsaglia 2003; Vigna 2016): enough for drawing hours.
struct Chance(u64);

impl Chance {
    fn unit(&mut self) -> f64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let bits = self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 11;
        (bits as f64 + 0.5) / 9_007_199_254_740_992.0
    }

    fn normal(&mut self) -> f64 {
        let (radius, angle) = ((-2.0 * self.unit().ln()).sqrt(), self.unit() * std::f64::consts::TAU);
        radius * angle.cos()
    }

    /// Marsaglia and Tsang 2000; below one by the power of a uniform.
    fn gamma(&mut self, shape: f64) -> f64 {
        if shape < 1.0 {
            let lift = self.unit().powf(1.0 / shape);
            return self.gamma(shape + 1.0) * lift;
        }
        let d = shape - 1.0 / 3.0;
        let c = 1.0 / (9.0 * d).sqrt();
        loop {
            let x = self.normal();
            let v = (1.0 + c * x).powi(3);
            if v > 0.0 && self.unit().ln() < 0.5 * x * x + d - d * v + d * v.ln() {
                return d * v;
            }
        }
    }

    fn task(&mut self, hours: &ThreePoint) -> f64 {
        let (low, high) = (hours.low.number(), hours.high.number());
        let range = high - low;
        let mean = (hours.six_means().number() / 6.0 - low) / range;
        // The deviation is a sixth of the range.
        let sum = mean * (1.0 - mean) * 36.0 - 1.0;
        let (a, b) = (self.gamma(mean * sum), self.gamma((1.0 - mean) * sum));
        low + range * a / (a + b)
    }
}

fn moments(values: &[f64]) -> (f64, f64) {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let variance = values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / values.len() as f64;
    (mean, variance.sqrt())
}

/// Jobs drawn with tasks that share nothing, and with tasks that share all; each in order.
fn drawn(tasks: &[ThreePoint]) -> [Vec<f64>; 2] {
    let mut chance = Chance(SEED);
    let mut apart = vec![0.0; JOBS];
    let mut in_step = vec![0.0; JOBS];
    for task in tasks {
        let mut hours: Vec<f64> = (0..JOBS).map(|_| chance.task(task)).collect();
        apart.iter_mut().zip(&hours).for_each(|(job, hours)| *job += hours);
        hours.sort_by(f64::total_cmp);
        in_step.iter_mut().zip(&hours).for_each(|(job, hours)| *job += hours);
    }
    apart.sort_by(f64::total_cmp);
    [apart, in_step]
}

#[test]
fn sums_of_drawn_tasks_have_the_mean_deviation_and_percentiles_of_the_closed_form() {
    let tasks: Vec<ThreePoint> = LABOUR_STEPS.iter().map(LabourStep::hours).collect();
    let mean = tasks.iter().map(|task| task.six_means().number() / 6.0).sum::<f64>();
    for (jobs, correlation, slack) in drawn(&tasks).into_iter().zip([0.0, 1.0]).map(|(jobs, r)| (jobs, r, 0.02)) {
        let (found_mean, found_deviation) = moments(&jobs);
        let sigma = deviation(&tasks, correlation);
        assert!((found_mean - mean).abs() < 0.005 * mean, "{found_mean} {mean}");
        assert!((found_deviation - sigma).abs() < 0.03 * sigma, "{correlation}: {found_deviation} {sigma}");
        let at = |percent: usize| jobs[JOBS * percent / 100];
        let closed = percentiles(mean, sigma, Distribution::Lognormal);
        for (percent, closed) in [(50, closed.p50), (80, closed.p80), (90, closed.p90)] {
            let (drawn, closed) = (at(percent), closed.number());
            assert!(
                (drawn - closed).abs() < slack * closed,
                "{correlation}, {percent}: drawn {drawn:.2}, closed {closed}"
            );
        }
    }
}
