//! A job in which part of the old deck stays: patches as panels, blocking as parts, joints as seams to tape.

use super::{Plan, parts};
use crate::cautions::PatchFindings;
use crate::error::Error;
use crate::fasteners::{Fastening, fasteners};
use crate::frame::{CrossMember, Frame};
use crate::geometry::{Bounds, Path};
use crate::job::{Checked, ExtraPart, PatchSettings};
use crate::length::{Area, Length};
use crate::nest::Effort;
use crate::panels::{Edge, Panel, SeamLine, panel_cut_out, panels_between};
use crate::patch::{OldBoard, Patch, PatchEdge, PatchRules, PatchSide, Patched, Rest, SheetSize, patch};
use crate::seams::{Cost, NoLayout, Seam, SeamLayout};
use crate::stock::SheetGrain;
use crate::takeoff::{Item, PurchaseRules, TakeoffInput, TakeoffLine, takeoff};
use serde::{Deserialize, Serialize};

/// What stays of the old deck, and what is replaced.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PlanPatch {
    /// The boards of the old deck.
    pub old_boards: Vec<OldBoardFacts>,
    /// The damaged places.
    pub damage: Vec<DamagedPlace>,
    /// The patches, from the bow aft.
    pub patches: Vec<PatchFacts>,
    /// Plywood of all patches and their blocking: the least there is.
    pub plywood: Area,
    /// Screws into blocking, from patches and from what stays.
    pub blocking_screws: usize,
    /// Screws into members along the sawn edges of what stays.
    pub old_edge_screws: usize,
}

/// A board of the old deck.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct OldBoardFacts {
    /// Its label, counted from the bow.
    pub label: String,
    /// Its edge.
    pub shape: Path<()>,
    /// The least rectangle around it.
    pub bounds: Bounds,
}

/// A damaged place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct DamagedPlace {
    /// Its name.
    pub name: String,
    /// Its edge.
    pub shape: Path<()>,
    /// The least rectangle around it.
    pub bounds: Bounds,
}

/// A patch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct PatchFacts {
    /// The old board that it is cut into.
    pub board: String,
    /// The new panels: one, or more where a notch parts it.
    pub panels: Vec<String>,
    /// The damaged places that it replaces.
    pub damage: Vec<String>,
    /// Its rectangle.
    pub bounds: Bounds,
    /// Its edges: fore, aft, port, starboard.
    pub edges: Vec<PatchEdge>,
    /// Blocking under its joints.
    pub blocking: Vec<BlockingPiece>,
    /// Plywood of the patch and its blocking.
    pub plywood: Area,
}

/// A piece of blocking under a joint.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BlockingPiece {
    /// What is written on it, as on the sheets.
    pub label: String,
    /// Where it lies under the deck.
    pub place: Bounds,
    /// Its longer side.
    pub length: Length,
    /// Its shorter side.
    pub width: Length,
    /// Screws into it on each side of the joint.
    pub screws_a_side: usize,
}

/// Fills a plan with patches instead of a whole deck; without a layout of seams.
pub(super) fn plan(plan: &mut Plan, checked: &Checked, settings: &PatchSettings, effort: Effort) -> Result<(), Error> {
    let old = old_panels(checked, settings);
    let boards: Vec<OldBoard> = old.iter().map(|panel| old_board(panel, checked)).collect();
    let rules = rules(checked, settings);
    plan.proven = true;
    let mut facts = PlanPatch {
        old_boards: old.iter().map(old_facts).collect(),
        damage: checked.damages.iter().map(damaged).collect(),
        patches: Vec::new(),
        plywood: Area::from_square_nanometres(0),
        blocking_screws: 0,
        old_edge_screws: 0,
    };
    match patch(&boards, &checked.damages, &checked.frame, &rules) {
        Patched::TooLarge { board, least } => plan.no_layout = Some(too_large(checked, &old, board, least)),
        Patched::Patches(patches) => fill(plan, &mut facts, checked, &old, &patches, effort)?,
    }
    plan.patch = Some(facts);
    Ok(())
}

fn old_panels(checked: &Checked, settings: &PatchSettings) -> Vec<Panel> {
    let line = |seam: &Length| SeamLine::new(*seam, *seam + settings.old_gap);
    let seams: Vec<SeamLine> = settings.old_seams.iter().map(line).collect();
    panels_between(&checked.outline, &seams, checked.outline.length(), &checked.openings, Some(checked.thickness))
}

fn old_board(panel: &Panel, checked: &Checked) -> OldBoard {
    let wood = checked.settings.schedule.edge_in_ply;
    let mut board = OldBoard::new(panel.label.clone(), panel.shape.map(|_| ()));
    board.clear = panel
        .openings
        .iter()
        .map(|opening| Bounds {
            fore: opening.bounds.fore - wood,
            aft: opening.bounds.aft + wood,
            port: opening.bounds.port - wood,
            starboard: opening.bounds.starboard + wood,
        })
        .collect();
    board
}

fn old_facts(panel: &Panel) -> OldBoardFacts {
    OldBoardFacts { label: panel.label.clone(), shape: panel.shape.map(|_| ()), bounds: panel.bounds }
}

fn damaged(damage: &crate::patch::Damage) -> DamagedPlace {
    DamagedPlace { name: damage.name.clone(), shape: damage.shape.clone(), bounds: damage.shape.bounds() }
}

fn rules(checked: &Checked, settings: &PatchSettings) -> PatchRules {
    let trim = checked.settings.saw.trim * 2;
    let sheets = checked.stock.iter().flat_map(|sheet| {
        let (length, width) = sheet.size();
        let (length, width) = (length - trim, width - trim);
        let along = SheetSize { athwart: length, along: width };
        let turned = (sheet.grain == SheetGrain::None).then_some(SheetSize { athwart: width, along: length });
        std::iter::once(along).chain(turned)
    });
    let layout = &checked.settings.rules;
    let mut rules = PatchRules::new(settings.margin, layout.least_bearing, settings.blocking_width, sheets.collect());
    rules.gap = layout.gap;
    rules.least_strip = settings.least_strip;
    rules.anywhere = settings.anywhere;
    rules
}

fn too_large(checked: &Checked, old: &[Panel], board: usize, least: Bounds) -> NoLayout {
    let say = |length: Length| checked.settings.notation.text(length);
    let label = old.get(board).map_or_else(String::new, |panel| panel.label.clone());
    let widest = checked.stock.iter().max_by_key(|sheet| sheet.size().1);
    let width = widest.map_or(Length::ZERO, |sheet| sheet.size().1);
    let longest = checked.stock.iter().map(|sheet| sheet.size().0).max().unwrap_or_default();
    let lacks = (least.depth() - width).max(least.breadth() - longest).max(Length::ZERO);
    let reason = format!(
        "No patch of old board {label} lands on members or blocking and comes out of a sheet: the whole board is {} by {}.",
        say(least.breadth()),
        say(least.depth()),
    );
    let mend = vec![
        format!("Sheets that give boards of {} by {}.", say(least.breadth()), say(least.depth())),
        "Blocking under edges athwart as well, or a smaller margin or strip.".to_owned(),
    ];
    NoLayout::by_sheet(reason, widest.map(|sheet| sheet.label.clone()), lacks, mend)
}

fn fill(
    plan: &mut Plan,
    facts: &mut PlanPatch,
    checked: &Checked,
    old: &[Panel],
    patches: &[Patch],
    effort: Effort,
) -> Result<(), Error> {
    let settings = &checked.settings;
    let mut joints = Joints::default();
    let mut boards: Vec<Panel> = Vec::new();
    for patch in patches {
        let Some(board) = old.get(patch.board) else { continue };
        let before = facts.patches.iter().filter(|other| other.board == board.label).map(|other| other.panels.len());
        let panels = joints.panels(patch, board, before.sum(), checked);
        facts.patches.push(patch_facts(patch, board, &panels, checked));
        boards.extend(panels);
    }
    let fastening = fasteners(&boards, &checked.frame, &checked.outline, &settings.schedule);
    let blocking: Vec<&BlockingPiece> = facts.patches.iter().flat_map(|patch| &patch.blocking).collect();
    facts.blocking_screws = blocking.iter().map(|piece| piece.screws_a_side * 2).sum();
    facts.old_edge_screws = facts.patches.iter().map(|patch| old_edge_screws(patch, &fastening)).sum();
    facts.plywood =
        Area::from_square_nanometres(facts.patches.iter().map(|patch| patch.plywood.square_nanometres()).sum::<i128>());
    let mut with_blocking = checked.clone();
    let part = |piece: &&BlockingPiece| ExtraPart::new(piece.label.clone(), piece.length, piece.width);
    with_blocking.extra_parts.extend(blocking.iter().map(part));
    let nest = parts::sheets(&boards, &with_blocking, effort)?;
    let layout = joints.layout(checked.outline.length());
    let mut counted = fastening.clone();
    counted.count += facts.old_edge_screws;
    let frame = under(patches, &checked.frame);
    let input = TakeoffInput {
        nest: &nest,
        stock: &checked.stock,
        panels: &boards,
        layout: &layout,
        fastening: &counted,
        fastener: &settings.schedule.fastener,
        frame: &frame,
        outline: &checked.outline,
        covering: plan.covering.as_ref(),
    };
    let buying = parts::purchase_rules(&settings.shop);
    let mut bought = takeoff(&input, &buying);
    bought.lines.extend(blocking_screws(facts.blocking_screws, &buying));
    plan.takeoff = Some(bought);
    plan.old_holes = super::fittings::old_holes(checked, Some(&fastening));
    plan.panels = boards;
    plan.fasteners = Some(fastening);
    plan.sheets = Some(nest);
    Ok(())
}

fn patch_facts(patch: &Patch, board: &Panel, panels: &[Panel], checked: &Checked) -> PatchFacts {
    let name = panels.first().map_or_else(|| board.label.clone(), |panel| panel.label.clone());
    let blocking = patch.blocking.iter().enumerate().map(|(index, place)| {
        let (length, width) = (place.breadth().max(place.depth()), place.breadth().min(place.depth()));
        BlockingPiece {
            label: format!("block {} of {name}", index + 1),
            place: *place,
            length,
            width,
            screws_a_side: screws_along(joint_length(patch, place), checked),
        }
    });
    let names = patch.damages.iter().filter_map(|damage| Some(checked.damages.get(*damage)?.name.clone()));
    PatchFacts {
        board: board.label.clone(),
        panels: panels.iter().map(|panel| panel.label.clone()).collect(),
        damage: names.collect(),
        bounds: patch.bounds,
        edges: patch.edges.to_vec(),
        blocking: blocking.collect(),
        plywood: patch.plywood,
    }
}

/// Blocking as broad as the patch lies under an edge athwart.
fn joint_length(patch: &Patch, place: &Bounds) -> Length {
    let athwart = place.port == patch.bounds.port && place.starboard == patch.bounds.starboard;
    if athwart { place.breadth() } else { place.depth() }
}

/// Screws along a joint, as in a row.
fn screws_along(length: Length, checked: &Checked) -> usize {
    let schedule = &checked.settings.schedule;
    let run = length - schedule.edge_in_ply * 2;
    if run.is_negative() { 1 } else { usize::try_from(run.steps_of(schedule.edge_spacing)).unwrap_or(0) + 1 }
}

/// What stays is screwed to the flange beside the patch with as many as the patch.
fn old_edge_screws(patch: &PatchFacts, fastening: &Fastening) -> usize {
    let of = |member: usize| {
        let rows = fastening.rows.iter().filter(|row| row.member == member && patch.panels.contains(&row.panel));
        rows.map(|row| row.positions.len()).sum::<usize>()
    };
    let members = patch.edges.iter().filter_map(|edge| match edge.on {
        Rest::Member(number) => Some(number),
        _ => None,
    });
    members.map(of).sum()
}

fn blocking_screws(needed: usize, buying: &PurchaseRules) -> Option<TakeoffLine> {
    let line = || buying.single(Item::Fastener, "Wood screws into blocking".into(), needed as u64, "screw");
    (needed > 0).then(line)
}

/// What the cautions look at.
pub(super) fn findings(plan: &Plan, checked: &Checked, settings: &PatchSettings) -> PatchFindings {
    let patches = plan.patch.iter().flat_map(|facts| &facts.patches);
    let probe = patches.flat_map(|patch| patch.edges.iter().filter_map(|edge| probe(patch, edge, checked, settings)));
    PatchFindings {
        panels: plan.panels.iter().map(|panel| panel.label.clone()).collect(),
        probe: probe.collect(),
        old: settings.old_thickness,
        new: checked.thickness,
    }
}

/// An old seam at which a patch ends because its board does, nearer to the damage than the margin.
fn probe(patch: &PatchFacts, edge: &PatchEdge, checked: &Checked, settings: &PatchSettings) -> Option<String> {
    let own = checked.damages.iter().filter(|damage| patch.damage.contains(&damage.name));
    let bounds = own.map(|damage| damage.shape.bounds());
    let (side, rim, off) = match edge.side {
        PatchSide::Fore => ("fore", Length::ZERO, bounds.map(|damage| damage.fore - edge.at).min()?),
        PatchSide::Aft => ("aft", checked.outline.length(), bounds.map(|damage| edge.at - damage.aft).min()?),
        PatchSide::Port | PatchSide::Starboard => return None,
    };
    let near = edge.on == Rest::BoardEdge && edge.at != rim && !off.is_negative() && off < settings.margin;
    near.then(|| format!("{side} edge of old board {}", patch.board))
}

/// The members as far as patches lie on them, for the tape on them.
fn under(patches: &[Patch], frame: &Frame) -> Frame {
    let mut all = Vec::new();
    for patch in patches {
        let bounds = &patch.bounds;
        let beneath = frame.members().iter().filter(|member| member.aft > bounds.fore && member.fore < bounds.aft);
        all.extend(beneath.map(|member| {
            let mut part: CrossMember = member.clone();
            part.port_end = Some(member.port_end.unwrap_or(bounds.port).max(bounds.port));
            part.starboard_end = Some(member.starboard_end.unwrap_or(bounds.starboard).min(bounds.starboard));
            part
        }));
    }
    Frame::of(all)
}

/// Sawn joints, numbered as seams are.
#[derive(Default)]
struct Joints(Vec<Seam>);

impl Joints {
    /// The panels of a patch, their joints marked; `before` of its board's panels are named already.
    fn panels(&mut self, patch: &Patch, board: &Panel, before: usize, checked: &Checked) -> Vec<Panel> {
        let bounds = &patch.bounds;
        let [fore, aft, port, starboard] = patch.edges.map(|edge| (edge.at, self.mark(&edge, bounds)));
        let strips = board.shape.strip(Some(fore), Some(aft));
        let across = strips.iter().flat_map(|strip| strip.transposed().strip(Some(port), Some(starboard)));
        let shapes: Vec<Path<Edge>> = across.map(|part| part.transposed()).collect();
        let named = |(index, shape): (usize, Path<Edge>)| {
            let letter = u8::try_from(before + index)
                .ok()
                .filter(|index| *index < 26)
                .map_or('z', |index| char::from(b'a' + index));
            let label = format!("{}{letter}", board.label);
            panel_cut_out(label, board.board, shape, &checked.openings, Some(checked.thickness))
        };
        shapes.into_iter().enumerate().map(named).collect()
    }

    /// The mark of an edge; a sawn one is a joint of its own.
    fn mark(&mut self, edge: &PatchEdge, bounds: &Bounds) -> Edge {
        let number = self.0.len() + 1;
        let member = match edge.on {
            // The old board's own marks stay; this one comes on no side.
            Rest::BoardEdge => return Edge::Seam { seam: 0, member: None },
            Rest::Member(number) => Some(number),
            Rest::Blocking => None,
        };
        let along = matches!(edge.side, PatchSide::Port | PatchSide::Starboard);
        let length = if along { bounds.depth() } else { bounds.breadth() };
        self.0.push(Seam {
            number,
            member: member.unwrap_or(0),
            fore: edge.at.min(edge.saw_at.unwrap_or(edge.at)),
            aft: edge.at.max(edge.saw_at.unwrap_or(edge.at)),
            bearing_fore: Length::ZERO,
            bearing_aft: Length::ZERO,
            shift: Length::ZERO,
            short_by: Length::ZERO,
            ends: None,
            length: Some(length),
        });
        Edge::Seam { seam: number, member }
    }

    /// The joints as a layout, for their tape.
    fn layout(self, finish: Length) -> SeamLayout {
        let cost = Cost {
            short_seams: 0,
            boards: 0,
            narrow_boards: 0,
            ripped_boards: 0,
            worst_margin: None,
            unevenness: Length::ZERO,
            seam_length: self.0.iter().filter_map(|seam| seam.length).sum(),
            shift: Length::ZERO,
            finish_short: Length::ZERO,
        };
        SeamLayout { boards: Vec::new(), seams: self.0, cost, finish }
    }
}
