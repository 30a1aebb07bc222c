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
//! | `openings` | each opening from the deck's edges, with the nearest seam and members |
//! | `patch` | what of an old deck is cut out, and what each edge rests on, where part of it stays |
//! | `panel-1`, … | a shape of panel, from its own edges |
//! | `saw-1`, … | sheets that are sawn alike, as the sawyer sees them |
//! | `fastening-1`, … | a panel's rows of fasteners |
//! | `remedies` | what mends flanges too narrow for two rows, where the job asks for that |
//! | `bolts` | what is bolted down again: holes, bolts and plates, where the job gives fittings |
//! | `tolerance` | what errors leave of the bearing at each seam, where the job reckons with them |
//! | `covering` | roll, seams, cut list and glue of the covering, where the job has one |
//! | `strip-out` | how the old deck comes off, where the job speaks of it |
//! | `survey` | what was measured: points, residuals, what was left out; where the job has a survey |
//! | `survey-form` | the same readings, to be filled in by hand |
//! | `span` | what boards take and fasteners hold, where the job gives a panel's rating or the flanges' alloy |
//! | `quote`, `quote-hours` | the price, and how sure the hours behind it are, where the job asks for it |
//!
//! A view that needs a further sheet goes on as `cover-2`, `saw-1-2` and so on.

mod alike;
mod bow_up;
mod deck_shape;
mod deck_sketch;
mod desk;
pub mod figure;
mod flow;
mod page;
mod part_on_sheet;
#[cfg(feature = "packet")]
pub mod pdf;
mod ruler;
pub mod sheet_frame;
mod survey_picture;
pub mod svg;
mod views;

use crate::error::{Error, Fault, Kind};
use crate::job::Paper;
use crate::length::Unit;
use crate::plan::Plan;
use crate::survey::Survey;
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

/// The points of a survey and the readings between them as SVG, without a plan.
///
/// # Examples
/// ```
/// use deck_core::{Unit, draw, job::SurveyCall};
/// let call = SurveyCall::from_json(r#"{
///     "datum": ["BP", "SP"],
///     "readings": [
///         {"kind": "distance", "between": ["BP", "SP"], "reading": 240},
///         {"kind": "tie", "of": "BS", "from": ["BP", "SP"], "readings": [100, 260]}
///     ]
/// }"#)?;
/// assert!(draw::survey_svg(&call.survey()?, Unit::Inch).starts_with("<svg"));
/// # Ok::<(), deck_core::Error>(())
/// ```
pub fn survey_svg(survey: &Survey, unit: Unit) -> String {
    let mut figure = Figure::new("Survey", figure::Paper::Letter);
    let (_, below) = survey_picture::draw(&mut figure, survey, figure::Paper::Letter.area(), unit);
    figure.height = figure.height.min(below);
    svg::write(&figure)
}

/// A form to fill in by hand on a boat that nobody has measured yet, its lines numbered as the job file's fields.
///
/// # Examples
/// ```
/// use deck_core::{draw, job::Paper};
/// let sheets = draw::survey_form(Paper::Letter);
/// assert!(draw::svg::write(&sheets[0]).contains("second diagonal"));
/// ```
pub fn survey_form(paper: Paper) -> Vec<Figure> {
    let pages = views::survey_form::blank(sheet(paper));
    let of = pages.len();
    pages.into_iter().enumerate().map(|(index, page)| page.numbered(index + 1, of)).collect()
}

fn sheet(paper: Paper) -> figure::Paper {
    match paper {
        Paper::Letter => figure::Paper::Letter,
        Paper::A4 => figure::Paper::A4,
    }
}

fn pages(plan: &Plan, paper: Paper) -> Vec<Page> {
    views::pages(&Desk::new(plan, sheet(paper)))
}
