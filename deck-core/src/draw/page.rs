//! A sheet of the packet before it is numbered.

use crate::draw::figure::{Figure, Paper, Rect};
use crate::draw::sheet_frame::{self, SheetFrame};

/// A sheet with its subject drawn, its furniture still to come.
#[derive(Debug, Clone)]
pub(super) struct Page {
    /// The name by which it is asked for.
    pub view: String,
    pub frame: SheetFrame,
    pub figure: Figure,
    pub paper: Paper,
}

impl Page {
    pub(super) fn new(view: impl Into<String>, frame: SheetFrame, paper: Paper) -> Page {
        let figure = Figure::new(format!("{}: {}", frame.job, frame.title), paper);
        Page { view: view.into(), frame, figure, paper }
    }

    /// The room for the subject.
    pub(super) fn body(paper: Paper) -> Rect {
        sheet_frame::body(paper)
    }

    /// The finished sheet.
    pub(super) fn numbered(mut self, number: usize, of: usize) -> Figure {
        self.frame.draw(&mut self.figure, number, of);
        self.figure
    }
}
