//! Seconds of one computation on a machine that others use as well.

use std::time::Instant;

/// Below this the reading itself, some hundredths of a millisecond, would show; and few others come in between.
const SHORT: f64 = 0.001;

/// Runs from its start to [`Stopwatch::seconds`].
#[derive(Debug)]
pub(crate) struct Stopwatch {
    start: Instant,
    on_processor: Option<f64>,
}

impl Stopwatch {
    pub(crate) fn start() -> Stopwatch {
        Stopwatch { on_processor: on_processor(), start: Instant::now() }
    }

    /// Seconds that this process was on a processor, where the system tells (Linux) and they are many enough; by the
    /// wall clock otherwise. The nest has one thread.
    pub(crate) fn seconds(&self) -> f64 {
        let wall = self.start.elapsed().as_secs_f64();
        match (self.on_processor, on_processor()) {
            (Some(start), Some(end)) if wall >= SHORT => end - start,
            _ => wall,
        }
    }
}

fn on_processor() -> Option<f64> {
    // The system brings its count up to date when a thread gives way; otherwise it is late by up to a tick.
    std::thread::yield_now();
    let text = std::fs::read_to_string("/proc/self/schedstat").ok()?;
    let nanoseconds: u64 = text.split(' ').next()?.parse().ok()?;
    Some(nanoseconds as f64 / 1e9)
}
