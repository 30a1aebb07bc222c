//! Cautions about what boards and fasteners take.

use super::Caution;

/// What a plan found of strength that a person has to look at, each named with its figures.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SpanFindings {
    /// Boards whose load is more than a limit, each with its worst.
    pub over: Vec<String>,
    /// Boards whose load is more than the beam's figure beside the table gives, and not more than the table's.
    pub beside: Vec<String>,
    /// Rows of fasteners whose load is more than they hold.
    pub rows: Vec<String>,
    /// Boards without a figure, with the reason.
    pub outside: Vec<String>,
    /// Boards that lie the weak way, with both figures.
    pub weak: Vec<String>,
}

const TABLES: &str = "the published tables named in the plan; licensed practice";

/// Cautions about strength.
pub fn span(findings: &SpanFindings) -> Vec<Caution> {
    let found = [
        Caution::triggered(
            "over-limit",
            findings.over.clone(),
            "The load that was chosen is more than these boards take by the plan's figures. The worst load of each board is named; the others are in the notes on strength. Shorten the bays with blocking, turn the boards, take a stronger panel, or ask a licensed engineer.",
            "Utilisation is load over limit; above 1 the limit is passed.",
            TABLES,
        ),
        Caution::triggered(
            "beam-beside",
            findings.beside.clone(),
            "The load that was chosen is more than the figure of our own beam, which stands beside the published table and decides nothing. Where the table has a figure its clause decides; read why the two differ, and ask a licensed engineer where it matters.",
            "The beam puts the live load on the worst choice of bays and spans from middle to middle of the bearings; the table loads all bays alike.",
            "derived here, no source for the beam's loading; licensed practice",
        ),
        Caution::triggered(
            "row-over-limit",
            findings.rows.clone(),
            "The load that was chosen is more than these rows hold by the plan's figures. Set more screws, take larger heads, or ask a licensed engineer.",
            "Utilisation is load over what the row holds; above 1 it is passed.",
            "Aluminum Design Manual and NDS, as the plan's clauses say; licensed practice",
        ),
        Caution::triggered(
            "no-span-figure",
            findings.outside.clone(),
            "For these boards there is no figure: ask a licensed engineer.",
            "Their bays, or the way they lie, are outside the published table, or too little is known of them.",
            TABLES,
        ),
        Caution::triggered(
            "weak-axis",
            findings.weak.clone(),
            "These boards lie with their strength axis along the members, the weak way. The span rating on the panel's stamp does not hold for them.",
            "A rating means the strength axis across the supports and two spans or more.",
            "APA PRP-108; the published tables named in the plan",
        ),
    ];
    found.into_iter().flatten().collect()
}
