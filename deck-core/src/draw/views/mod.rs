//! The sheets of a job: one file a view, each from the plan to pages.
//!
//! A view decides nothing: it prints what the plan holds. The only figures made here are differences of printed running
//! dimensions, and distances counted from a panel's own edges instead of the deck's.

mod arrangements;
mod blocking;
mod bolt_sheet;
mod cover;
mod covering_sheet;
mod cuts;
mod fastening_sheet;
mod frame_sheet;
mod opening_notes;
mod opening_sheet;
mod panel_sheet;
mod panel_tables;
mod patch_sheet;
mod plan_view;
mod quote_page;
mod remedy_sheet;
mod saw_drawing;
mod saw_sheet;
mod span_notes;
mod span_picture;
mod span_sheet;
mod strip_out_sheet;
pub(super) mod survey_form;
mod survey_sheet;
mod tolerance_sheet;
mod waste;

use super::desk::Desk;
use super::page::Page;

/// Every sheet of the job, in the order of the packet.
pub(super) fn pages(desk: &Desk<'_>) -> Vec<Page> {
    let mut sheets = strip_out_sheet::pages(desk);
    sheets.extend(arrangements::pages(desk));
    sheets.extend(plan_view::pages(desk));
    sheets.extend(frame_sheet::pages(desk));
    sheets.extend(opening_sheet::pages(desk));
    sheets.extend(patch_sheet::pages(desk));
    sheets.extend(panel_sheet::pages(desk));
    sheets.extend(saw_sheet::pages(desk));
    sheets.extend(fastening_sheet::pages(desk));
    sheets.extend(remedy_sheet::pages(desk));
    sheets.extend(bolt_sheet::pages(desk));
    sheets.extend(tolerance_sheet::pages(desk));
    sheets.extend(covering_sheet::pages(desk));
    sheets.extend(span_sheet::pages(desk));
    sheets.extend(quote_page::pages(desk));
    sheets.extend(survey_sheet::pages(desk));
    if let Some(survey) = desk.plan.survey.as_ref().filter(|survey| !survey.readings.is_empty()) {
        sheets.extend(survey_form::of(survey, &desk.plan.job.name, desk.paper));
    }
    let mut pages = cover::pages(desk, &sheets);
    pages.extend(sheets);
    pages
}

#[cfg(test)]
mod tests;
