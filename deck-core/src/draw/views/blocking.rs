//! Joints along the boat and the blocks under them, on the plan and on the fastening sheets.

use crate::arrange::{Block, Joint};
use crate::draw::deck_shape;
use crate::draw::desk::{Desk, list};
use crate::draw::figure::{Column, Figure, Line, Mapping, Mark, Micrometres, Path, Table};
use crate::length::Length;
use crate::panels::Panel;

pub(super) fn joints<'a>(desk: &Desk<'a>) -> &'a [Joint] {
    desk.plan.division.as_ref().map_or(&[], |division| &division.joints)
}

pub(super) fn blocks<'a>(desk: &Desk<'a>) -> &'a [Block] {
    desk.plan.division.as_ref().map_or(&[], |division| &division.blocks)
}

/// A block, hidden below the boards.
pub(super) fn draw_block(figure: &mut Figure, mapping: &Mapping, block: &Block) {
    let rect = deck_shape::band(mapping, block.fore, block.aft, block.port, block.starboard);
    figure.stroke(Path::rect(rect), Line::Hidden);
}

/// Joints by their distance from the port edge, those at one distance together.
pub(super) fn joint_marks(desk: &Desk<'_>, at: impl Fn(Length) -> Micrometres) -> Vec<Mark> {
    let mut places: Vec<(Length, Vec<String>)> = Vec::new();
    for joint in joints(desk) {
        let name = format!("J{}", joint.number);
        match places.iter_mut().find(|(place, _)| *place == joint.port) {
            Some((_, names)) => names.push(name),
            None => places.push((joint.port, vec![name])),
        }
    }
    let mark = |(place, names): (Length, Vec<String>)| {
        Mark::new(at(place), format!("{}: {}", names.join(" "), desk.ruler.text(place))).bold(true)
    };
    places.into_iter().map(mark).collect()
}

/// The blocks under a panel's edges along the boat.
pub(super) fn under<'a>(desk: &Desk<'a>, panel: &Panel) -> Vec<&'a Block> {
    let bounds = panel.bounds;
    let near = |block: &&Block| {
        let beside = block.port < bounds.starboard && block.starboard > bounds.port;
        beside && block.fore < bounds.aft && block.aft > bounds.fore && rows(block, panel).next().is_some()
    };
    blocks(desk).iter().filter(near).collect()
}

/// The rows of screws through a panel into a block.
fn rows<'a>(block: &'a Block, panel: &Panel) -> impl Iterator<Item = (Length, &'a [Length])> {
    let bounds = panel.bounds;
    let through = block.rows.iter().filter(move |row| (bounds.port..=bounds.starboard).contains(&row.from_port));
    through.map(|row| (row.from_port, row.stations.as_slice()))
}

/// Screws through a panel into blocks: distance from the port edge and stations.
pub(super) fn screws(desk: &Desk<'_>, panel: &Panel) -> Vec<(Length, Length)> {
    let of_block = |block: &'_ Block| -> Vec<(Length, Length)> {
        rows(block, panel).flat_map(|(from_port, stations)| stations.iter().map(move |x| (*x, from_port))).collect()
    };
    under(desk, panel).into_iter().flat_map(of_block).collect()
}

/// A table of the screws into blocks; none where the panel has no joint along the boat.
pub(super) fn table(desk: &Desk<'_>, panel: &Panel) -> Option<Table> {
    let ruler = desk.ruler;
    let member =
        |number: Option<usize>| number.map_or_else(|| "end of joint".to_owned(), |number| format!("M{number}"));
    let columns = vec![
        Column::words("Into block"),
        Column::words("between"),
        Column::words("from the port edge"),
        Column::words("stations, from the bow edge"),
    ];
    let mut table = Table::new(columns).size(Desk::FIGURES);
    for block in under(desk, panel) {
        for (from_port, stations) in rows(block, panel) {
            table.row([
                format!("{} under joint J{}", block.label, block.joint),
                list(&[member(block.fore_member), member(block.aft_member)]),
                ruler.text(from_port),
                stations.iter().map(|x| ruler.text(*x)).collect::<Vec<String>>().join(", "),
            ]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}
