//! Sets headings, paragraphs and tables one below the other, over as many sheets as they need.

use crate::draw::figure::{MILLIMETRE, Micrometres, Point, Rect, Table, TextSize, wrap};
use crate::draw::page::Page;

/// Space before a heading, and between blocks.
const BEFORE_HEADING: Micrometres = 3 * MILLIMETRE;
const AFTER: Micrometres = 2 * MILLIMETRE;
/// A heading is not left with less room under it than this.
const WITH_HEADING: Micrometres = 18 * MILLIMETRE;

/// Text that runs on from sheet to sheet.
pub(super) struct Flow {
    /// The first sheet's view and title, from which those of further ones are made.
    view: String,
    title: String,
    done: Vec<Page>,
    page: Page,
    area: Rect,
    /// Where the next block starts.
    top: Micrometres,
}

impl Flow {
    /// Starts on a sheet within an area; further sheets have their whole body.
    pub(super) fn new(page: Page, area: Rect) -> Flow {
        let (view, title) = (page.view.clone(), page.frame.title.clone());
        Flow { view, title, done: Vec::new(), top: area.top, area, page }
    }

    /// The sheets.
    pub(super) fn finish(mut self) -> Vec<Page> {
        self.done.push(self.page);
        self.done
    }

    /// Height that is left on the sheet.
    fn room(&self) -> Micrometres {
        self.area.bottom - self.top
    }

    fn is_fresh(&self) -> bool {
        self.top == self.area.top
    }

    fn turn_over(&mut self) {
        let number = self.done.len() + 2;
        let mut frame = self.page.frame.clone();
        frame.title = format!("{} (continued)", self.title);
        frame.scale = None;
        frame.bow = None;
        let next = Page::new(format!("{}-{number}", self.view), frame, self.page.paper);
        self.area = Page::body(next.paper);
        self.top = self.area.top;
        self.done.push(std::mem::replace(&mut self.page, next));
    }

    fn at(&self) -> Point {
        Point::new(self.area.left, self.top)
    }

    /// A heading, kept with the start of what follows.
    pub(super) fn heading(&mut self, words: &str) {
        if !self.is_fresh() {
            self.top += BEFORE_HEADING;
            if self.room() < WITH_HEADING {
                self.turn_over();
            }
        }
        let at = self.at();
        self.top += self.page.figure.paragraph(at, self.area.width(), words, TextSize::HEADING, true) + MILLIMETRE;
    }

    /// A heading, and a table that begins under it on the same sheet.
    pub(super) fn headed(&mut self, words: &str, table: &Table) {
        let room = self.room() - 2 * BEFORE_HEADING - TextSize::HEADING.line_height();
        if !self.is_fresh() && table.rows_that_fit(self.area.width(), room, 0) == 0 {
            self.turn_over();
        }
        self.heading(words);
        self.table(table);
    }

    /// A drawing in the room that is left, or on a new sheet where that is lower than `least`; it tells where it ends.
    pub(super) fn drawing(&mut self, least: Micrometres, draw: impl FnOnce(&mut Page, Rect) -> Micrometres) {
        if self.room() < least && !self.is_fresh() {
            self.turn_over();
        }
        let room = Rect { top: self.top, ..self.area };
        self.top = draw(&mut self.page, room) + AFTER;
    }

    /// A paragraph.
    pub(super) fn paragraph(&mut self, words: &str, size: TextSize, bold: bool) {
        let lines = wrap(words, size, bold, self.area.width());
        let height = size.line_height() * i64::try_from(lines.len()).unwrap_or(0);
        if height > self.room() && !self.is_fresh() {
            self.turn_over();
        }
        let at = self.at();
        self.top += self.page.figure.paragraph(at, self.area.width(), words, size, bold) + AFTER;
    }

    /// A table, split where the sheet ends. A row higher than a sheet is set all the same.
    pub(super) fn table(&mut self, table: &Table) {
        let mut first = 0;
        while first < table.rows.len() {
            let fitting = table.rows_that_fit(self.area.width(), self.room(), first);
            if fitting == 0 && !self.is_fresh() {
                self.turn_over();
                continue;
            }
            let end = first + fitting.max(1);
            let at = self.at();
            self.top += table.draw(&mut self.page.figure, at, self.area.width(), first..end) + AFTER;
            first = end;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::{Column, Paper};
    use crate::draw::sheet_frame::SheetFrame;

    #[test]
    fn a_long_table_runs_over_sheets_and_shows_each_row_once() {
        let page = Page::new("list", SheetFrame::new("Job", "List"), Paper::Letter);
        let mut flow = Flow::new(page, Page::body(Paper::Letter));
        let mut table = Table::new(vec![Column::words("Word")]);
        (0..150).for_each(|row| table.row([format!("row {row}")]));
        flow.heading("Rows");
        flow.table(&table);
        flow.paragraph("After the rows.", TextSize::BODY, false);
        let pages = flow.finish();
        assert!(pages.len() > 1);
        assert_eq!(pages[1].view, "list-2");
        let words = pages.iter().flat_map(|page| &page.figure.texts);
        assert_eq!(words.filter(|text| text.words.starts_with("row ")).count(), 150);
        let count = pages.len();
        for (index, page) in pages.into_iter().enumerate() {
            assert_eq!(page.numbered(index + 1, count).overlaps(), []);
        }
    }
}
