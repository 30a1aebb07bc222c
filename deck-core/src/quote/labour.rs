//! Hours by task, and how sure their sum is.

use super::QuoteInput;
use super::spread::{Distribution, Percentiles, deviation, percentiles};
use crate::money::{Figure, Money, ThreePoint};
use serde::{Deserialize, Serialize};

/// A task with its hours.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Task {
    /// A short word for it.
    pub task: String,
    /// What is done.
    pub words: String,
    /// Hours at best, most likely, at worst.
    pub hours: ThreePoint,
    /// What an hour of it costs, where that is not the shop's usual rate.
    pub rate: Option<Money>,
    /// Where the hours come from.
    pub source: String,
}

impl Task {
    /// A task at the shop's usual rate.
    pub fn new(
        task: impl Into<String>,
        words: impl Into<String>,
        hours: ThreePoint,
        source: impl Into<String>,
    ) -> Task {
        Task { task: task.into(), words: words.into(), hours, rate: None, source: source.into() }
    }
}

/// At which figure hours are charged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum ChargeAt {
    /// At the mean.
    #[default]
    Mean,
    /// At the hours that are enough in half of such jobs.
    P50,
    /// At the hours that are enough in eight of ten.
    P80,
    /// At the hours that are enough in nine of ten.
    P90,
}

impl ChargeAt {
    /// Its name.
    pub fn words(self) -> &'static str {
        match self {
            ChargeAt::Mean => "mean",
            ChargeAt::P50 => "50th percentile",
            ChargeAt::P80 => "80th percentile",
            ChargeAt::P90 => "90th percentile",
        }
    }
}

/// A task's hours, in figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct TaskHours {
    /// A short word for it.
    pub task: String,
    /// What is done.
    pub words: String,
    /// At best.
    pub low: Figure,
    /// Most likely.
    pub likely: Figure,
    /// At worst.
    pub high: Figure,
    /// (low + 4 likely + high)/6, rounded to hundredths.
    pub mean: Figure,
    /// (high − low)/6, rounded to hundredths.
    pub deviation: Figure,
    /// Where the hours come from.
    pub source: String,
}

/// The hours of a job, and how sure they are.
///
/// # Method
/// Means and variances of the tasks add up (Malcolm et al. 1959). The deviation of the sum depends on what the tasks
/// share: age and rust make all of them slow at once. With a correlation r between any two tasks the variance is
/// (1 − r) Σ σ² + r (Σ σ)²; both ends are given beside the shop's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct LabourQuote {
    /// The tasks in order.
    pub tasks: Vec<TaskHours>,
    /// Sums at best, most likely, at worst.
    pub sums: ThreePoint,
    /// Mean of the sum.
    pub mean: Figure,
    /// Deviation of the sum where the tasks share nothing.
    pub deviation_independent: Figure,
    /// Deviation of the sum where they share all.
    pub deviation_shared: Figure,
    /// How much they are taken to share, from 0 to 1.
    pub correlation: Figure,
    /// Deviation of the sum at that.
    pub deviation: Figure,
    /// What the sum is taken to be.
    pub distribution: Distribution,
    /// Why.
    pub why: String,
    /// Hours that are enough in so many of a hundred such jobs.
    pub percentiles: Percentiles,
    /// The same where the tasks share nothing.
    pub percentiles_independent: Percentiles,
    /// The same where they share all.
    pub percentiles_shared: Percentiles,
    /// At which figure hours are charged.
    pub charged: ChargeAt,
    /// Hours that are charged.
    pub charged_hours: Figure,
    /// Of these, hours beyond the tasks' means.
    pub risk_hours: Figure,
}

pub(super) fn labour(input: &QuoteInput<'_>) -> LabourQuote {
    let tasks: Vec<TaskHours> = input.tasks.iter().map(TaskHours::new).collect();
    let hours: Vec<ThreePoint> = input.tasks.iter().map(|task| task.hours).collect();
    let sums: ThreePoint = hours.iter().copied().sum();
    let mean = sums.mean(2);
    let at = |correlation: f64| {
        let deviation = deviation(&hours, correlation);
        let spread = percentiles(sums.six_means().number() / 6.0, deviation, input.distribution);
        (Figure::nearest(deviation, 2), spread)
    };
    let (independent, shared, own) = (at(0.0), at(1.0), at(input.correlation.number()));
    let of_tasks: Figure = tasks.iter().map(|task| task.mean).sum();
    let charged_hours = match input.charge {
        ChargeAt::Mean => of_tasks,
        ChargeAt::P50 => own.1.p50,
        ChargeAt::P80 => own.1.p80,
        ChargeAt::P90 => own.1.p90,
    };
    // The median may lie below the mean; nobody charges less than the tasks' means.
    let risk_hours = (charged_hours - of_tasks).max(Figure::ZERO);
    LabourQuote {
        tasks,
        sums,
        mean,
        deviation_independent: independent.0,
        deviation_shared: shared.0,
        correlation: input.correlation,
        deviation: own.0,
        distribution: input.distribution,
        why: input.distribution.why().into(),
        percentiles: own.1,
        percentiles_independent: independent.1,
        percentiles_shared: shared.1,
        charged: input.charge,
        charged_hours: of_tasks + risk_hours,
        risk_hours,
    }
}

impl TaskHours {
    fn new(task: &Task) -> TaskHours {
        let ThreePoint { low, likely, high, .. } = task.hours;
        TaskHours {
            task: task.task.clone(),
            words: task.words.clone(),
            low,
            likely,
            high,
            mean: task.hours.mean(2),
            deviation: task.hours.deviation(2),
            source: task.source.clone(),
        }
    }
}
