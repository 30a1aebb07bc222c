//! A caution.

use serde::{Deserialize, Serialize};

/// Something to know before acting on a plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Caution {
    /// A short word for it, the same in every plan.
    pub id: String,
    /// Whether it holds always, or was triggered by this plan.
    pub source: Source,
    /// What it is about in this plan: seams, members, openings, sheets. Empty for a standing one.
    pub about: Vec<String>,
    /// What to do, or to look at.
    pub text: String,
    /// Why.
    pub reason: String,
    /// The rule or practice that it defers to.
    pub defers_to: String,
}

/// Where a caution comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// It holds for every job.
    Standing,
    /// Something in this plan triggered it.
    Plan,
}

impl Caution {
    pub(super) fn standing(id: &str, text: &str, reason: &str, defers_to: &str) -> Caution {
        Caution {
            id: id.into(),
            source: Source::Standing,
            about: Vec::new(),
            text: text.into(),
            reason: reason.into(),
            defers_to: defers_to.into(),
        }
    }

    /// Triggered by the things named; none where nothing is.
    pub(super) fn triggered(
        id: &str,
        about: Vec<String>,
        text: impl Into<String>,
        reason: &str,
        defers_to: &str,
    ) -> Option<Caution> {
        (!about.is_empty()).then(|| Caution {
            id: id.into(),
            source: Source::Plan,
            about,
            text: text.into(),
            reason: reason.into(),
            defers_to: defers_to.into(),
        })
    }
}
