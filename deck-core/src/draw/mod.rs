//! Puts a plan on paper.
//!
//! One figure model ([`figure`]) and two writers ([`svg`](mod@svg) and, with the feature `packet`, [`pdf`]) know nothing
//! of decks. [`sheet_frame`] is the furniture that every sheet of a job shares. The views turn a plan into figures, one
//! file a view, and decide nothing.
//!
//! ```text
//!   Plan ──→ views ──→ pages ──→ figures ──→ svg: one sheet, for screens
//!                                       └──→ pdf: the job packet
//! ```
//!
//! | view | what it shows |
//! |---|---|
//! | `cover` | the job, the order list, cautions, what to measure first, what was assumed |
//! | `arrangements` | the manners of laying boards, where some were compared |
//! | `plan` | the deck from above, from the bow edge and the port edge |
//! | `frame` | members measured at their ends: by how much each is out |
//! | `panel-1`, … | a shape of panel, from its own edges |
//! | `saw-1`, … | sheets that are sawn alike, as the sawyer sees them |
//! | `fastening-1`, … | a panel's rows of fasteners |
//! | `remedies` | what mends flanges too narrow for two rows, where the job asks for that |
//! | `tolerance` | what errors leave of the bearing at each seam, where the job reckons with them |
//! | `span` | what boards take and fasteners hold, where the job gives a panel's rating or the flanges' alloy |
//!
//! A view that needs a further sheet goes on as `cover-2`, `saw-1-2` and so on.

mod alike;
mod bow_up;
mod deck_shape;
mod desk;
pub mod figure;
mod flow;
mod page;
mod part_on_sheet;
#[cfg(feature = "packet")]
pub mod pdf;
mod ruler;
pub mod sheet_frame;
pub mod svg;
mod views;

use crate::error::{Error, Fault, Kind};
use crate::job::Paper;
use crate::plan::Plan;
use desk::Desk;
use figure::Figure;
use page::Page;

/// The names of the plan's views, in the order of the packet.
///
/// # Examples
/// ```
/// use deck_core::{Job, draw, plan};
/// let job = Job::from_json(r#"{
///     "schema": 1, "name": "Sandpiper", "unit": "in",
///     "deck": {"length": "20 ft", "beam": 96},
///     "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 240, "spacing": 24}},
///     "stock": [{"label": "3/4 ply", "length": 96, "width": 48, "thickness": "3/4"}],
///     "gap": 0
/// }"#)?;
/// let plan = plan(&job)?;
/// let views = draw::views(&plan);
/// assert!(views.contains(&"plan".to_string()) && views.contains(&"fastening-5".to_string()));
/// assert!(draw::svg(&plan, "saw-1")?.starts_with("<svg"));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn views(plan: &Plan) -> Vec<String> {
    pages(plan, plan.basis.paper).into_iter().map(|page| page.view).collect()
}

/// One view as SVG, on the plan's own paper.
///
/// # Errors
/// A name that is not among [`views`].
pub fn svg(plan: &Plan, view: &str) -> Result<String, Error> {
    let pages = pages(plan, plan.basis.paper);
    let of = pages.len();
    let names: Vec<String> = pages.iter().map(|page| page.view.clone()).collect();
    let found = pages.into_iter().enumerate().find(|(_, page)| page.view == view);
    let Some((index, page)) = found else {
        let message = format!("The plan has no view \"{view}\".");
        let accepted = format!("Its views are {}.", desk::list(&names));
        return Err(Fault::new(Kind::UnknownView, view, message, accepted).into());
    };
    Ok(svg::write(&page.numbered(index + 1, of)))
}

/// The job packet as PDF: every view, on that paper. The same plan gives the same bytes.
///
/// # Errors
/// A document that cannot be put together.
#[cfg(feature = "packet")]
pub fn packet(plan: &Plan, paper: Paper) -> Result<Vec<u8>, Error> {
    pdf::write(&figures(plan, paper), &plan.job.name)
}

/// Every sheet of the packet as a figure, for writers of one's own.
pub fn figures(plan: &Plan, paper: Paper) -> Vec<Figure> {
    let pages = pages(plan, paper);
    let of = pages.len();
    pages.into_iter().enumerate().map(|(index, page)| page.numbered(index + 1, of)).collect()
}

fn pages(plan: &Plan, paper: Paper) -> Vec<Page> {
    let paper = match paper {
        Paper::Letter => figure::Paper::Letter,
        Paper::A4 => figure::Paper::A4,
    };
    views::pages(&Desk::new(plan, paper))
}
