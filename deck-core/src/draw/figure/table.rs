//! Ruled tables that know their height and can be split over sheets.

use super::{Anchor, Figure, Line, MILLIMETRE, Micrometres, Path, Point, Rect, Text, TextSize, Tone, width, wrap};
use std::ops::Range;

/// Space to each side of a cell's words, and above and below them.
const PAD: Micrometres = 1100;
const LEAD: Micrometres = 500;

/// Where words stand in a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    /// At the left: words.
    Left,
    /// At the right: figures.
    Right,
    /// In the middle: marks.
    Middle,
}

/// A column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// Its heading.
    pub title: String,
    /// Where its words stand.
    pub align: Align,
    /// True where it takes up spare room, and breaks its words where there is too little.
    pub flexible: bool,
    /// The widest that it starts from: what is longer is broken.
    pub most: Option<Micrometres>,
}

impl Column {
    /// A column as wide as its longest cell.
    pub fn new(title: impl Into<String>, align: Align) -> Column {
        Column { title: title.into(), align, flexible: false, most: None }
    }

    /// A column of words that takes what room there is.
    pub fn words(title: impl Into<String>) -> Column {
        Column { title: title.into(), align: Align::Left, flexible: true, most: None }
    }

    /// A column of words that takes no more room than that.
    pub fn at_most(title: impl Into<String>, most: Micrometres) -> Column {
        Column { title: title.into(), align: Align::Left, flexible: false, most: Some(most) }
    }
}

/// A row of cells, one for each column; missing ones stay empty.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Row {
    /// The words.
    pub cells: Vec<String>,
    /// In heavy type.
    pub bold: bool,
}

/// A table. Rows are numbered from zero.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Row>,
    /// Height of type.
    pub size: TextSize,
}

impl Table {
    /// A table without rows.
    pub fn new(columns: Vec<Column>) -> Table {
        Table { columns, rows: Vec::new(), size: TextSize::BODY }
    }

    /// In another size of type.
    #[must_use]
    pub fn size(mut self, size: TextSize) -> Table {
        self.size = size;
        self
    }

    /// Adds a row.
    pub fn row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(Row { cells: cells.into_iter().collect(), bold: false });
    }

    /// Adds a row in heavy type.
    pub fn bold_row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(Row { cells: cells.into_iter().collect(), bold: true });
    }

    /// The height with all rows.
    pub fn height(&self, room: Micrometres) -> Micrometres {
        let widths = self.widths(room);
        self.head_height(&widths) + self.rows.iter().map(|row| self.row_height(row, &widths)).sum::<Micrometres>()
    }

    /// The width that the table takes of that room.
    pub fn width(&self, room: Micrometres) -> Micrometres {
        self.widths(room).iter().sum()
    }

    /// How many rows from `first` on fit under a heading.
    pub fn rows_that_fit(&self, room: Micrometres, height: Micrometres, first: usize) -> usize {
        let widths = self.widths(room);
        let mut taken = self.head_height(&widths);
        self.rows
            .iter()
            .skip(first)
            .take_while(|row| {
                taken += self.row_height(row, &widths);
                taken <= height
            })
            .count()
    }

    /// Draws the heading and some of the rows; the answer is the height that it took.
    pub fn draw(&self, figure: &mut Figure, top_left: Point, room: Micrometres, rows: Range<usize>) -> Micrometres {
        let widths = self.widths(room);
        let right = top_left.x + widths.iter().sum::<Micrometres>();
        let head_bottom = top_left.y + self.head_height(&widths);
        figure.fill(Path::rect(Rect::new(top_left.x, top_left.y, right, head_bottom)), Tone::Pale);
        figure.line(top_left, Point::new(right, top_left.y), Line::Thin);
        let head = Row { cells: self.columns.iter().map(|column| column.title.clone()).collect(), bold: true };
        self.draw_row(figure, &head, top_left, &widths);
        figure.line(Point::new(top_left.x, head_bottom), Point::new(right, head_bottom), Line::Thin);
        let mut top = head_bottom;
        for row in self.rows.iter().skip(rows.start).take(rows.len()) {
            self.draw_row(figure, row, Point::new(top_left.x, top), &widths);
            top += self.row_height(row, &widths);
            figure.line(Point::new(top_left.x, top), Point::new(right, top), Line::Fine);
        }
        let mut x = top_left.x;
        for edge in std::iter::once(0).chain(widths) {
            x += edge;
            figure.line(Point::new(x, top_left.y), Point::new(x, top), Line::Fine);
        }
        top - top_left.y
    }

    fn draw_row(&self, figure: &mut Figure, row: &Row, top_left: Point, widths: &[Micrometres]) {
        let mut left = top_left.x;
        for ((column, cell), &width) in self.columns.iter().zip(&row.cells).zip(widths) {
            let (x, anchor) = match column.align {
                Align::Left => (left + PAD, Anchor::Start),
                Align::Right => (left + width - PAD, Anchor::End),
                Align::Middle => (left + width / 2, Anchor::Middle),
            };
            let mut middle = top_left.y + LEAD + self.size.line_height() / 2;
            for line in wrap(cell, self.size, row.bold, width - 2 * PAD) {
                figure.text(Text::new(line, Point::new(x, middle), self.size).anchor(anchor).bold(row.bold).level());
                middle += self.size.line_height();
            }
            left += width;
        }
    }

    fn head_height(&self, widths: &[Micrometres]) -> Micrometres {
        self.cells_height(self.columns.iter().map(|column| &column.title), true, widths)
    }

    fn row_height(&self, row: &Row, widths: &[Micrometres]) -> Micrometres {
        self.cells_height(row.cells.iter(), row.bold, widths)
    }

    fn cells_height<'a>(
        &self,
        cells: impl Iterator<Item = &'a String>,
        bold: bool,
        widths: &[Micrometres],
    ) -> Micrometres {
        let lines = cells.zip(widths).map(|(cell, width)| wrap(cell, self.size, bold, width - 2 * PAD).len()).max();
        let lines = i64::try_from(lines.unwrap_or(1).max(1)).unwrap_or(i64::MAX / self.size.line_height());
        lines * self.size.line_height() + 2 * LEAD
    }

    /// Widths of the columns: that of the longest cell, and what is left over or lacking is the flexible columns'.
    fn widths(&self, room: Micrometres) -> Vec<Micrometres> {
        let flexible = self.columns.iter().filter(|column| column.flexible).count();
        let Some(count) = i64::try_from(flexible).ok().filter(|&count| count > 0) else {
            return self.columns.iter().enumerate().map(|(at, column)| self.width_of(at, column).taken).collect();
        };
        let mut widths: Vec<Width> =
            self.columns.iter().enumerate().map(|(at, column)| self.width_of(at, column)).collect();
        let spare = room - widths.iter().map(|width| width.taken).sum::<Micrometres>();
        if spare >= 0 {
            widths.iter_mut().filter(|width| width.flexible).for_each(|width| width.taken += spare / count);
        } else {
            give_way(&mut widths, -spare);
        }
        widths.into_iter().map(|width| width.taken).collect()
    }

    fn width_of(&self, at: usize, column: &Column) -> Width {
        let longest = self.longest(at, false);
        let breaks = column.flexible || column.most.is_some_and(|most| longest > most);
        let least = if breaks { self.longest(at, true) } else { longest };
        let taken = column.most.map_or(longest, |most| longest.min(most).max(least));
        Width { taken, least: if column.flexible { least } else { taken }, flexible: column.flexible }
    }

    /// Width of the longest cell of a column, or of its longest word.
    fn longest(&self, column: usize, by_word: bool) -> Micrometres {
        let head = self.columns.get(column).map(|column| (column.title.as_str(), true));
        let cells = self.rows.iter().filter_map(|row| row.cells.get(column).map(|cell| (cell.as_str(), row.bold)));
        let measure = |(words, bold): (&str, bool)| {
            let pieces: Vec<&str> = if by_word { words.split([' ', '\n']).collect() } else { words.lines().collect() };
            pieces.into_iter().map(|piece| width(piece, self.size, bold)).max().unwrap_or(0)
        };
        head.into_iter().chain(cells).map(measure).max().unwrap_or(0) + 2 * PAD
    }
}

/// A column's width while room is shared out.
struct Width {
    taken: Micrometres,
    /// Width of its longest word.
    least: Micrometres,
    flexible: bool,
}

/// Takes room from the columns: the widest gives way first, a millimetre at a time, down to its longest word.
fn give_way(widths: &mut [Width], mut lacking: Micrometres) {
    while lacking > 0 {
        let givers = widths.iter_mut().filter(|width| width.taken > width.least);
        let Some(widest) = givers.max_by_key(|width| width.taken) else { return };
        let step = lacking.min(MILLIMETRE).min(widest.taken - widest.least);
        widest.taken -= step;
        lacking -= step;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::figure::Paper;

    fn cuts() -> Table {
        let mut table = Table::new(vec![
            Column::new("Cut", Align::Right),
            Column::words("What is done"),
            Column::new("Fence", Align::Right),
        ]);
        for cut in 1..=30 {
            let words =
                if cut % 3 == 0 { "Turn the strip and cut it across; the kept side lies to the fence" } else { "Rip" };
            table.row([cut.to_string(), words.to_owned(), format!("{cut}-1/2\"")]);
        }
        table
    }

    #[test]
    fn a_table_is_as_high_as_it_says_and_as_wide_as_its_room() {
        let mut figure = Figure::new("table", Paper::A4);
        let table = cuts();
        let height = table.draw(&mut figure, Point::new(20_000, 20_000), 80_000, 0..30);
        assert_eq!(height, table.height(80_000));
        assert_eq!(table.width(80_000), 80_000);
        assert_eq!(figure.overlaps(), []);
    }

    #[test]
    fn a_split_table_shows_each_row_once() {
        let table = cuts();
        let mut first = 0;
        let mut sheets = 0;
        while first < table.rows.len() {
            let count = table.rows_that_fit(80_000, 60_000, first);
            assert!(count > 0);
            let mut figure = Figure::new("table", Paper::A4);
            assert!(table.draw(&mut figure, Point::default(), 80_000, first..first + count) <= 60_000);
            first += count;
            sheets += 1;
        }
        assert_eq!(first, 30);
        assert!(sheets > 1);
    }
}
