//! A saw that knows nothing: it is given a bare sheet and a cut tree and reports the pieces that fall off.
//!
//! Written against the contract alone, and shares no code with the nest.

use deck_core::nest::{CutSheet, Tree};
use deck_core::stock::{Saw, SawLine, Sheet};

/// A piece that fell off the saw, in nanometres.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Fallen {
    pub(crate) what: What,
    pub(crate) x: i64,
    pub(crate) y: i64,
    pub(crate) length: i64,
    pub(crate) width: i64,
}

/// What is written on a piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum What {
    Part(String),
    Offcut,
    Waste,
}

/// Saws one sheet and returns the pieces in the order in which they fall, and the area turned to dust.
pub(crate) fn replay(sheet: &CutSheet, stock: &Sheet, saw: &Saw) -> Result<(Vec<Fallen>, i128), String> {
    let (length, width) = stock.size();
    let mut replay = Replay { kerf: saw.kerf.nanometres(), fallen: Vec::new(), dust: 0 };
    replay.saw(&sheet.cuts, 0, 0, length.nanometres(), width.nanometres())?;
    Ok((replay.fallen, replay.dust))
}

struct Replay {
    kerf: i64,
    fallen: Vec<Fallen>,
    dust: i128,
}

impl Replay {
    fn saw(&mut self, tree: &Tree, x: i64, y: i64, length: i64, width: i64) -> Result<(), String> {
        let mut fall = |what| {
            self.fallen.push(Fallen { what, x, y, length, width });
            Ok(())
        };
        let cut = match tree {
            Tree::Part { part } => return fall(What::Part(part.clone())),
            Tree::Offcut { .. } => return fall(What::Offcut),
            Tree::Waste { .. } => return fall(What::Waste),
            Tree::Cut(cut) => cut,
        };
        let rip = cut.cut == SawLine::Length;
        let (across, along) = if rip { (width, length) } else { (length, width) };
        let (at, kerf) = (cut.at.nanometres(), cut.kerf.nanometres());
        let rest = across - at - kerf;
        if at < 0 || kerf < 0 || rest < 0 {
            return Err(format!("a cut at {at} + {kerf} leaves a piece of {across}"));
        }
        // The blade may run off an edge, at the origin edge or at the far one, and eats less there.
        if kerf > self.kerf || (kerf < self.kerf && rest > 0 && at > 0) {
            return Err(format!("a blade of {} eats {kerf} inside the piece", self.kerf));
        }
        if cut.children.1.is_none() != (rest == 0) {
            return Err(format!("{rest} is left behind the cut, children {:?}", cut.children.1));
        }
        self.dust += i128::from(kerf) * i128::from(along);
        let (first, second) = (&cut.children.0, &cut.children.1);
        let behind = at + kerf;
        if rip {
            self.saw(first, x, y, length, at)?;
            second.as_ref().map_or(Ok(()), |second| self.saw(second, x, y + behind, length, rest))
        } else {
            self.saw(first, x, y, at, width)?;
            second.as_ref().map_or(Ok(()), |second| self.saw(second, x + behind, y, rest, width))
        }
    }
}

/// The tree inside the trim cuts: they come first, and each has a child that is waste.
pub(crate) fn inside_trim<'t>(tree: &'t Tree, saw: &Saw) -> Result<&'t Tree, String> {
    let mut inner = tree;
    if saw.trim.is_zero() {
        return Ok(inner);
    }
    for _ in 0..4 {
        let Tree::Cut(cut) = inner else { return Err("fewer than four trim cuts".to_owned()) };
        inner = match (&cut.children.0, &cut.children.1) {
            (Tree::Waste { .. }, Some(second)) => second,
            (first, Some(Tree::Waste { .. }) | None) => first,
            _ => return Err("a trim cut without waste".to_owned()),
        };
    }
    Ok(inner)
}

/// Counts stages as a shop does, and checks the first direction.
pub(crate) fn check_stages(tree: &Tree, saw: &Saw) -> Result<(), String> {
    let inner = inside_trim(tree, saw)?;
    if let (Tree::Cut(cut), Some(first)) = (inner, saw.first)
        && cut.cut != first
        && !frees_one_part(inner)
    {
        return Err(format!("the first line runs along the {:?}", cut.cut));
    }
    let stages = stages(inner, None);
    match saw.stages {
        Some(allowed) if stages > u32::from(allowed) => Err(format!("{stages} stages, {allowed} allowed")),
        _ => Ok(()),
    }
}

fn stages(tree: &Tree, last: Option<SawLine>) -> u32 {
    let Tree::Cut(cut) = tree else { return 0 };
    if frees_one_part(tree) {
        return 0;
    }
    let turn = u32::from(last != Some(cut.cut));
    let deeper = |tree: &Tree| stages(tree, Some(cut.cut));
    turn + deeper(&cut.children.0).max(cut.children.1.as_ref().map_or(0, deeper))
}

/// A last cut, with one part on one side of it and nothing but waste on the other.
fn frees_one_part(tree: &Tree) -> bool {
    let Tree::Cut(cut) = tree else { return false };
    let part = |tree: &Tree| matches!(tree, Tree::Part { .. });
    let waste = |tree: &Tree| matches!(tree, Tree::Waste { .. } | Tree::Offcut { .. });
    let (first, second) = (&cut.children.0, cut.children.1.as_ref());
    (part(first) && second.is_none_or(waste)) || (waste(first) && second.is_some_and(part))
}
