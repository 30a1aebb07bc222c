//! Markdown tables and the figures in them.

/// A table with a head; every cell is text already.
#[derive(Debug)]
pub(crate) struct Table {
    columns: usize,
}

impl Table {
    /// Prints the head; the first column is text, the others are figures.
    pub(crate) fn new(head: &[&str]) -> Table {
        let rule = |column: usize| if column == 0 { "---" } else { "---:" };
        println!("| {} |", head.join(" | "));
        println!("| {} |", (0..head.len()).map(rule).collect::<Vec<_>>().join(" | "));
        Table { columns: head.len() }
    }

    pub(crate) fn row(&self, cells: &[String]) {
        debug_assert_eq!(cells.len(), self.columns);
        println!("| {} |", cells.join(" | "));
    }
}

/// The middle one, or the mean of the two in the middle.
pub(crate) fn median(figures: impl Iterator<Item = f64>) -> f64 {
    let mut sorted: Vec<f64> = figures.collect();
    sorted.sort_by(f64::total_cmp);
    match sorted.len() {
        0 => 0.0,
        count => f64::midpoint(sorted[(count - 1) / 2], sorted[count / 2]),
    }
}

/// Milliseconds with three figures.
pub(crate) fn milliseconds(seconds: f64) -> String {
    three_figures(seconds * 1000.0)
}

/// Three figures or, from 100 up, all that stand before the point.
pub(crate) fn three_figures(value: f64) -> String {
    let places = match value.abs() {
        size if size >= 99.95 => 0,
        size if size >= 9.995 => 1,
        size if size >= 0.9995 => 2,
        _ => 3,
    };
    format!("{value:.places$}")
}
