//! From a job's stock to the question that the seams answer.

use super::{Checked, SawSpec, Settings};
use crate::arrange::{ArrangeProblem, ArrangeRules, Ply};
use crate::frame::Frame;
use crate::length::Length;
use crate::outline::{KeepClear, Opening, Outline};
use crate::seams::{BoardStock, Errors, NoLayout, SeamProblem, Seams, seams};
use crate::stock::{Saw, Sheet, SheetGrain};

/// What a deck is split by, as far as it is known.
pub(super) struct Question<'a> {
    pub(super) frame: &'a Frame,
    pub(super) deck_length: Length,
    /// None: the seams' lengths do not count, and no sheet is asked whether it reaches across.
    pub(super) outline: Option<&'a Outline>,
    pub(super) stock: &'a [Sheet],
    pub(super) openings: &'a [Opening],
    pub(super) keep_clear: &'a [KeepClear],
    pub(super) settings: &'a Settings,
}

impl Checked {
    /// The layouts of seams, or the reason why there is none.
    pub(crate) fn layouts(&self) -> Seams {
        self.layouts_best(self.settings.shop.layouts)
    }

    /// So many layouts, best first.
    pub(crate) fn layouts_best(&self, best: usize) -> Seams {
        self.question().answer_best(best)
    }

    /// The errors that the plan reckons with, where the job asks for that.
    pub(crate) fn errors(&self) -> Option<Errors> {
        self.question().errors()
    }

    /// The widest board that reaches across; zero where none does.
    pub(crate) fn widest_board(&self) -> Length {
        let stock = board_stock(&self.stock, &self.settings.saw, Some(self.outline.beam()));
        stock.into_iter().map(|board| board.width).max().unwrap_or_default()
    }

    fn question(&self) -> Question<'_> {
        Question {
            frame: &self.frame,
            deck_length: self.outline.length(),
            outline: Some(&self.outline),
            stock: &self.stock,
            openings: &self.openings,
            keep_clear: &self.keep_clear,
            settings: &self.settings,
        }
    }

    /// The question how boards may lie.
    pub(crate) fn arrange_problem(&self) -> ArrangeProblem<'_> {
        let settings = &self.settings;
        let asked = &settings.arranging;
        let rules = ArrangeRules::new(settings.rules.clone(), asked.block_width, asked.block_spacing)
            .stagger(asked.stagger)
            .side_overhang(settings.shop.side_overhang)
            .kerf(settings.saw.kerf);
        let sheets = plies(&self.stock, &settings.saw);
        ArrangeProblem::new(&self.frame, &self.outline, sheets, rules, settings.notation)
            .openings(&self.openings)
            .keep_clear(&self.keep_clear)
    }
}

impl Question<'_> {
    /// The layouts, or the reason why there is none.
    pub(super) fn answer(&self) -> Seams {
        self.answer_best(self.settings.shop.layouts)
    }

    fn answer_best(&self, best: usize) -> Seams {
        let settings = self.settings;
        let beam = self.outline.map(Outline::beam);
        let stock = board_stock(self.stock, &settings.saw, beam);
        if let (true, Some(beam)) = (stock.is_empty(), beam) {
            return Seams::none(self.too_short(beam));
        }
        let mut problem = SeamProblem::new(self.frame, self.deck_length, stock, settings.rules.clone())
            .clear(self.kept_clear())
            .notation(settings.notation)
            .best(best);
        problem.outline = self.outline;
        problem.errors = self.errors().filter(|_| settings.tolerance.as_ref().is_some_and(|errors| errors.by_margin));
        let mut found = seams(&problem);
        if let (Some(reason), Some(beam)) = (&mut found.no_layout, beam) {
            reason.mend.extend(self.left_out(beam));
        }
        found
    }

    /// The errors of boards from this stock, where the job reckons with errors.
    fn errors(&self) -> Option<Errors> {
        let saw = &self.settings.saw;
        let beam = self.outline.map(Outline::beam);
        let sheets = self.stock.iter().filter_map(|sheet| Some((sheet, board_width(sheet, saw, beam)?)));
        Some(self.settings.tolerance.as_ref()?.errors(sheets, !saw.trim.is_zero()))
    }

    /// Sheets to buy that do not reach across, each with what it lacks.
    fn left_out(&self, beam: Length) -> Vec<String> {
        let saw = &self.settings.saw;
        let say = |length: Length| self.settings.notation.text(length);
        let short = self.stock.iter().filter(|sheet| !sheet.offcut && board_width(sheet, saw, Some(beam)).is_none());
        short
            .map(|sheet| {
                let length = usable(sheet, saw).0;
                let lacks = say(beam - length);
                format!(
                    "Longer sheets of \"{}\": they give {} and the deck is {} across, {lacks} short.",
                    sheet.label,
                    say(length),
                    say(beam)
                )
            })
            .collect()
    }

    /// Openings and keep-clear zones alike: no seam crosses either. Between a seam and an opening there is wood for a
    /// fastener: its edge distance, at the least.
    fn kept_clear(&self) -> Vec<KeepClear> {
        let wood = self.settings.schedule.edge_in_ply;
        let openings = self.openings.iter().map(|opening| {
            let bounds = opening.path().bounds();
            KeepClear::new(opening.name.clone(), bounds.fore - wood, bounds.aft + wood)
        });
        openings.chain(self.keep_clear.iter().cloned()).collect()
    }

    fn too_short(&self, beam: Length) -> NoLayout {
        let say = |length: Length| self.settings.notation.text(length);
        let saw = &self.settings.saw;
        let longest = self.stock.iter().max_by_key(|sheet| usable(sheet, saw).0);
        let length = longest.map_or(Length::ZERO, |sheet| usable(sheet, saw).0);
        let label = longest.map(|sheet| sheet.label.clone());
        let reason = format!(
            "The deck is {} across, and the longest sheet in stock ({}) gives {}: {} short. Only boards that reach across \
             in one piece are laid out.",
            say(beam),
            label.as_deref().unwrap_or("none"),
            say(length),
            say(beam - length),
        );
        let mend = vec![format!("Sheets that give boards {} long.", say(beam))];
        NoLayout::by_sheet(reason, label, beam - length, mend)
    }
}

/// The sheets that reach across the deck, each with the widest board it gives. Offcuts are counted on only where
/// nothing can be bought: there is one of each, and the seams would be planned on many.
fn board_stock(stock: &[Sheet], saw: &Saw, beam: Option<Length>) -> Vec<BoardStock> {
    let reaching = |offcut: bool| {
        let sheets = stock.iter().filter(move |sheet| sheet.offcut == offcut);
        sheets
            .filter_map(|sheet| Some(BoardStock { label: sheet.label.clone(), width: board_width(sheet, saw, beam)? }))
            .collect::<Vec<BoardStock>>()
    };
    let bought = reaching(false);
    if bought.is_empty() { reaching(true) } else { bought }
}

/// The widest board that reaches across the beam, strength axis athwart where the sheet has one. Without a beam every sheet
/// is taken to reach across with its length.
fn board_width(sheet: &Sheet, saw: &Saw, beam: Option<Length>) -> Option<Length> {
    let (length, width) = usable(sheet, saw);
    let Some(beam) = beam else { return Some(width).filter(|width| *width > Length::ZERO) };
    let along = (length >= beam).then_some(width);
    let across = (sheet.grain == SheetGrain::None && width >= beam).then_some(length);
    along.max(across).filter(|width| *width > Length::ZERO)
}

fn usable(sheet: &Sheet, saw: &Saw) -> (Length, Length) {
    less_trim(sheet, saw.trim)
}

fn less_trim(sheet: &Sheet, trim: Length) -> (Length, Length) {
    let (length, width) = sheet.size();
    (length - trim * 2, width - trim * 2)
}

/// True where there are sheets and none reaches across a beam.
pub(super) fn none_reaches(stock: &[Sheet], saw: &SawSpec, beam: Length) -> bool {
    let saw = Saw { trim: saw.trim.unwrap_or(crate::published::defaults::TRIM.value), ..Saw::default() };
    !stock.is_empty() && board_stock(stock, &saw, Some(beam)).is_empty()
}

/// The sheets that boards are counted on when they may lie in any manner: those to buy or, where there are none, those on
/// the rack. One without a strength axis stands both ways round.
pub(super) fn plies(stock: &[Sheet], saw: &Saw) -> Vec<Ply> {
    let bought = stock.iter().any(|sheet| !sheet.offcut);
    let mut plies = Vec::new();
    for sheet in stock.iter().filter(|sheet| sheet.offcut != bought) {
        let (length, width) = usable(sheet, saw);
        plies.push(Ply::new(sheet.label.clone(), length, width));
        if sheet.grain == SheetGrain::None && length != width {
            plies.push(Ply::new(sheet.label.clone(), width, length));
        }
    }
    plies
}
