//! The seams along the boat, and the blocks under them.

use super::{ArrangeProblem, Block, BlockRow, Joint, Stretch};
use crate::frame::CrossMember;
use crate::geometry::Limit;
use crate::length::Length;

/// A line along the boat at which boards meet: its gap, and the stations between which it is wanted.
#[derive(Debug, Clone, Copy)]
pub(super) struct JointLine {
    pub(super) strip: Option<usize>,
    pub(super) port: Length,
    pub(super) fore: Length,
    pub(super) aft: Length,
}

/// Joints and blocks of some lines. A joint has the number of its line, counted from 1; a line in no board is none.
pub(super) fn joints(problem: &ArrangeProblem<'_>, lines: &[JointLine]) -> (Vec<Joint>, Vec<Block>) {
    let joints = lines.iter().enumerate().map(|(index, line)| joint(problem, index + 1, line));
    let joints: Vec<Joint> = joints.filter(|joint| !joint.stretches.is_empty()).collect();
    let mut blocks: Vec<Block> = joints.iter().flat_map(|joint| under(problem, joint)).collect();
    name(&mut blocks);
    (joints, blocks)
}

fn joint(problem: &ArrangeProblem<'_>, number: usize, line: &JointLine) -> Joint {
    let starboard = line.port + problem.rules.seams.gap;
    let clipped = problem.outline.path().stretches(line.port, starboard).into_iter().filter_map(|(fore, aft)| {
        let (fore, aft) = (fore.max(line.fore), aft.min(line.aft));
        (fore < aft).then_some(Stretch { fore, aft })
    });
    let stretches: Vec<Stretch> = clipped.collect();
    let length = stretches.iter().map(|stretch| stretch.aft - stretch.fore).sum();
    Joint { number, strip: line.strip, port: line.port, starboard, stretches, length }
}

/// A block in each bay that the joint crosses, as long as the bay is clear.
fn under(problem: &ArrangeProblem<'_>, joint: &Joint) -> Vec<Block> {
    let half = problem.rules.block_width / 2;
    let middle = joint.port.midpoint(joint.starboard);
    let (port, starboard) = (middle - half, middle - half + problem.rules.block_width);
    let reaches = |member: &&CrossMember| {
        member.port_end.is_none_or(|end| end <= port.max(Length::ZERO))
            && member.starboard_end.is_none_or(|end| end >= starboard.min(problem.outline.beam()))
    };
    let members: Vec<&CrossMember> = problem.frame.members().iter().filter(reaches).collect();
    let mut blocks = Vec::new();
    for pair in members.windows(2) {
        let [before, behind] = pair else { continue };
        for stretch in &joint.stretches {
            let (fore, aft) = (before.aft.max(stretch.fore), behind.fore.min(stretch.aft));
            if fore < aft {
                let mut block = Block {
                    label: String::new(),
                    joint: joint.number,
                    fore_member: (fore == before.aft).then_some(before.number),
                    aft_member: (aft == behind.fore).then_some(behind.number),
                    fore,
                    aft,
                    port,
                    starboard,
                    length: aft - fore,
                    width: problem.rules.block_width,
                    trimmed: false,
                    rows: Vec::new(),
                };
                block.trimmed = is_trimmed(problem, &block);
                block.rows = rows(problem, joint, &block);
                blocks.push(block);
            }
        }
    }
    blocks
}

fn is_trimmed(problem: &ArrangeProblem<'_>, block: &Block) -> bool {
    let past = [(block.fore, Limit::Aft), (block.aft, Limit::Fore)].into_iter().any(|(station, limit)| {
        let inside = problem.outline.path().breadths(station, limit);
        !inside.iter().any(|(port, starboard)| *port <= block.port && block.starboard <= *starboard)
    });
    let under = problem.openings.iter().any(|opening| {
        let bounds = opening.path().bounds();
        bounds.port < block.starboard
            && bounds.starboard > block.port
            && bounds.fore < block.aft
            && bounds.aft > block.fore
    });
    past || under
}

/// A row in the board on each side, at the board's edge distance from the joint and from the block's ends, evenly divided.
fn rows(problem: &ArrangeProblem<'_>, joint: &Joint, block: &Block) -> Vec<BlockRow> {
    let distance = problem.rules.seams.edge_in_ply;
    let (low, high) = (block.fore + distance, block.aft - distance);
    let steps = if low < high { (high - low).steps_of(problem.rules.block_spacing) } else { 0 };
    let at = |step: i64| if steps == 0 { low.midpoint(high) } else { low + (high - low).part(step, steps) };
    let row = |from_port: Length| {
        // Where the bow's corner has taken the board away there is nothing to screw.
        let on_board = |station: &Length| {
            let inside = problem.outline.path().breadths(*station, Limit::Fore);
            inside.iter().any(|(port, starboard)| *port + distance <= from_port && from_port <= *starboard - distance)
        };
        BlockRow { from_port, stations: (0..=steps).map(at).filter(on_board).collect() }
    };
    let both = [joint.port - distance, joint.starboard + distance];
    both.into_iter().map(row).filter(|row| !row.stations.is_empty()).collect()
}

/// `1K`, `2K`, … for the sizes in the order in which they come up: a label that begins with a figure is no small part's.
fn name(blocks: &mut [Block]) {
    let mut sizes: Vec<(Length, Length)> = Vec::new();
    for block in blocks {
        let size = (block.length, block.width);
        let place = sizes.iter().position(|known| *known == size).unwrap_or_else(|| {
            sizes.push(size);
            sizes.len() - 1
        });
        block.label = format!("{}K", place + 1);
    }
}
