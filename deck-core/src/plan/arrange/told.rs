//! The words for an arrangement.

use super::found::{Arrangement, PlanDivision};
use super::priced::Priced;
use crate::arrange::{ArrangementKind, Division};
use crate::job::Checked;
use crate::length::Length;

/// What it looks like, in a sentence.
pub(super) fn detail(checked: &Checked, priced: &Priced) -> String {
    let say = |length: Length| checked.settings.notation.text(length);
    let strips = priced.layout().map_or(0, |layout| layout.boards.len());
    let Some(division) = &priced.division else {
        return format!("{strips} boards, each in one piece from side to side.");
    };
    match division.kind {
        ArrangementKind::Athwart | ArrangementKind::FillerStrips => {
            let fillers = widths(checked, division).map(|(port, starboard)| port.min(starboard));
            let (least, most) = (fillers.clone().min().unwrap_or_default(), fillers.max().unwrap_or_default());
            let wide = if least == most { say(least) } else { format!("{} to {}", say(least), say(most)) };
            format!("{strips} strips, each with a filler {wide} wide on alternating sides.")
        }
        ArrangementKind::CentreButt => {
            let ports: Vec<Length> = division.joints.iter().map(|joint| joint.port).collect();
            let (least, most) = (ports.iter().min().copied(), ports.iter().max().copied());
            let (least, most) = (least.unwrap_or_default(), most.unwrap_or_default());
            let place = if least == most { say(least) } else { format!("{} and {}", say(least), say(most)) };
            format!("{strips} strips, each in two boards that butt at {place} from the port edge.")
        }
        ArrangementKind::ForeAndAft => {
            let widths: Vec<String> = division.rows.iter().map(|row| say(row.width())).collect();
            format!("{} rows from port, {} wide, with {strips} boards.", widths.len(), widths.join(", "))
        }
    }
}

/// Width of both boards of each strip.
fn widths<'a>(checked: &'a Checked, division: &'a Division) -> impl Iterator<Item = (Length, Length)> + Clone + 'a {
    let beam = checked.outline.beam();
    division.joints.iter().map(move |joint| (joint.port, beam - joint.starboard))
}

/// What the plan says of the division that is built.
pub(super) fn told(checked: &Checked, priced: &Priced, table: &[Arrangement]) -> Option<PlanDivision> {
    let division = priced.division.as_ref()?;
    let settings = &checked.settings;
    let say = |length: Length| settings.notation.text(length);
    let through = checked.thickness * 2;
    Some(PlanDivision {
        kind: division.kind,
        rows: division.rows.clone(),
        joints: division.joints.clone(),
        blocks: division.blocks.clone(),
        screws: division.blocks.iter().map(crate::arrange::Block::screws).sum(),
        screw: format!("Screws into blocks, shorter than {} (board and block)", say(through)),
        block_spacing: settings.arranging.block_spacing,
        zones: division.zones.clone(),
        rules: rules(checked, division),
        chosen: chosen(checked, priced, table),
    })
}

fn rules(checked: &Checked, division: &Division) -> Vec<String> {
    let settings = &checked.settings;
    let say = |length: Length| settings.notation.text(length);
    let asked = &settings.arranging;
    let stagger = match (division.kind, asked.stagger) {
        (_, 0) => "Butts and joints of neighbours may meet.".to_owned(),
        (ArrangementKind::ForeAndAft, 1) => "Butts of neighbouring rows do not lie on the same member.".to_owned(),
        (ArrangementKind::ForeAndAft, members) => {
            format!(
                "Butts of neighbouring rows lie {members} members apart at the least, counted from one to the other."
            )
        }
        _ => {
            format!("Joints of neighbouring strips lie {} apart at the least, a block's width.", say(asked.block_width))
        }
    };
    vec![
        format!("{stagger} Common practice, no source."),
        format!(
            "Blocks {} wide fill the clear distance between flanges under every joint: common practice, no source; glued and \
             screwed.",
            say(asked.block_width)
        ),
        format!(
            "A row of screws into each block on both sides of the joint, {} from it, at most {} apart.",
            say(settings.rules.edge_in_ply),
            say(asked.block_spacing)
        ),
    ]
}

/// Why it is built and not another.
fn chosen(checked: &Checked, priced: &Priced, table: &[Arrangement]) -> String {
    let asked = &checked.settings.arranging;
    let possible = table.iter().filter(|row| row.rank.is_some()).count();
    let compared = match possible {
        1 => format!("of {} arrangements compared it is the only one that can be", table.len()),
        _ => format!("{} arrangements were compared, {possible} can be", table.len()),
    };
    let why = match asked.build {
        Some(_) => format!("Boards lie {} as the job says; {compared}.", priced.kind),
        None => format!("Boards lie {}: {compared}, and this is ranked first.", priced.kind),
    };
    let wide = if asked.needed {
        let beam = checked.settings.notation.text(checked.outline.beam());
        format!("No sheet in stock reaches across the deck ({beam}). ")
    } else {
        String::new()
    };
    format!("{wide}{why}")
}
