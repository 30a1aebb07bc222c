//! What stands below the drawing of a panel: its measures, its corners, its openings.

use super::panel_sheet::PanelSheet;
use crate::draw::desk::{Desk, list};
use crate::draw::figure::{Align, Column, Table};
use crate::geometry::{self, Arc};
use crate::length::Length;
use crate::outline::Rim;
use crate::panels::{Axis, Edge, Panel, Taper};

impl PanelSheet<'_> {
    pub(super) fn facts(&self) -> Table {
        let (desk, panel, ruler) = (self.desk, self.panel, self.desk.ruler);
        let mut table = Table::new(vec![Column::new("Net", Align::Left), Column::words("")]).size(Desk::FIGURES);
        let mut say = |name: &str, words: String| table.row([name.to_owned(), words]);
        say("athwart", ruler.both(panel.length));
        say("fore and aft", ruler.both(panel.width));
        say("both diagonals", format!("{} of the rectangle, before corners are cut", ruler.both(panel.diagonal)));
        if let Some(taper) = panel.taper {
            say("taper", taper_words(desk, &taper));
        }
        say("thickness", ruler.text(desk.plan.basis.thickness));
        let axis = match panel.strength_axis {
            Axis::Athwart => "athwart, along the cross members",
            Axis::ForeAndAft => "fore and aft, across the cross members",
        };
        say("strength axis", axis.to_owned());
        if let Some(joints) = joints(panel) {
            say("edges along the boat", joints);
        }
        let weight = panel.weight_lb.map(|pounds| format!(", {} dry", desk.mass(pounds)));
        say("each", format!("{}{}", desk.area(panel.area), weight.unwrap_or_default()));
        for panel in self.alike {
            let bounds = panel.bounds;
            let place = format!("from {} to {} aft of the bow edge", ruler.text(bounds.fore), ruler.text(bounds.aft));
            let supports = self.supports(panel);
            say(&format!("panel {}", panel.label), format!("{place}; rests on {supports}"));
        }
        table
    }

    /// The members under a panel.
    fn supports(&self, panel: &Panel) -> String {
        let layout = self.desk.plan.layouts.first();
        let board = layout.and_then(|layout| layout.boards.iter().find(|board| board.number == panel.board));
        if self.desk.plan.patch.is_some() {
            return self.under_patch(panel);
        }
        let names: Vec<String> =
            board.into_iter().flat_map(|board| &board.supports).map(|member| format!("M{member}")).collect();
        list(&names)
    }

    /// The members under a patch; what its edges rest on, the sheet of patches says.
    fn under_patch(&self, panel: &Panel) -> String {
        let bounds = panel.bounds;
        let members = self.desk.plan.frame.iter();
        let under = members.filter(|member| member.aft > bounds.fore && member.fore < bounds.aft);
        let names: Vec<String> = under.map(|member| format!("M{}", member.number)).collect();
        if names.is_empty() { "blocking".to_owned() } else { list(&names) }
    }

    /// Corners in order, and how the edge runs from each to the next; none for a plain rectangle.
    pub(super) fn corners(&self) -> Option<Table> {
        let ruler = self.desk.ruler;
        let mut table = Table::new(vec![
            Column::new("No.", Align::Right),
            Column::new("from fore", Align::Right),
            Column::new("from port", Align::Right),
            Column::new("then", Align::Left),
            Column::new("centre from fore", Align::Right),
            Column::new("from port", Align::Right),
            Column::words("edge"),
        ])
        .size(Desk::FIGURES);
        for (index, (side, _)) in self.shape.walk().enumerate() {
            let arc = side.arc;
            let course = arc.map_or_else(|| "straight".to_owned(), |arc| format!("radius {}", ruler.text(arc.radius)));
            let centre = |pick: fn(&Arc) -> Length| arc.map_or_else(String::new, |arc| ruler.text(pick(&arc)));
            table.row([
                (index + 1).to_string(),
                ruler.text(side.from.x),
                ruler.text(side.from.y),
                course,
                centre(|arc| arc.centre.x),
                centre(|arc| arc.centre.y),
                edge_name(side.edge),
            ]);
        }
        self.is_shaped().then_some(table)
    }

    pub(super) fn openings_table(&self) -> Option<Table> {
        let ruler = self.desk.ruler;
        let mut table = Table::new(vec![
            Column::words("Opening"),
            Column::new("from fore edge", Align::Right),
            Column::new("from port edge", Align::Right),
            Column::words("shape"),
        ])
        .size(Desk::FIGURES);
        for (opening, shape, bounds) in &self.openings {
            let purpose = opening.purpose.as_ref().map(|purpose| format!(" ({purpose})")).unwrap_or_default();
            let range = |from, to| format!("{} to {}", ruler.text(from), ruler.text(to));
            let (station, distance, words) = match round(shape) {
                Some(arc) => (
                    ruler.text(arc.centre.x),
                    ruler.text(arc.centre.y),
                    format!("round, diameter {}; figures are to its centre", ruler.text(bounds.aft - bounds.fore)),
                ),
                None => (
                    range(bounds.fore, bounds.aft),
                    range(bounds.port, bounds.starboard),
                    shape.sides().iter().find_map(|side| side.arc).map_or_else(
                        || "square corners".to_owned(),
                        |arc| format!("corner radius {}", ruler.text(arc.radius)),
                    ),
                ),
            };
            table.row([format!("{}{purpose}", opening.name), station, distance, words]);
        }
        (!self.openings.is_empty()).then_some(table)
    }
}

/// The joints at a panel's sides; none where it has none.
fn joints(panel: &Panel) -> Option<String> {
    let bounds = panel.bounds;
    let side =
        |at: Length| panel.shape.walk().find(|(side, to)| side.from.y == at && to.y == at && side.from.x != to.x);
    let name = |at: Length| side(at).map_or_else(|| "shaped".to_owned(), |(side, _)| edge_name(side.edge));
    let has = panel.sides(|edge| matches!(edge, Edge::Joint { .. })).next().is_some();
    has.then(|| format!("port: {}; starboard: {}", name(bounds.port), name(bounds.starboard)))
}

/// A taper as running figures from the rectangle's fore edge, at the port and the starboard end of each edge.
pub(super) fn taper_words(desk: &Desk<'_>, taper: &Taper) -> String {
    let text = |length: Length| desk.ruler.text(length);
    let edge = |name: &str, port: Length, starboard: Length| {
        format!("{name} edge {} at the port end, {} at the starboard end", text(port), text(starboard))
    };
    let mut edges = Vec::new();
    if taper.fore_port != taper.fore_starboard {
        edges.push(edge("fore", taper.fore_port, taper.fore_starboard));
    }
    if taper.aft_port != taper.aft_starboard {
        edges.push(edge("aft", taper.aft_port, taper.aft_starboard));
    }
    let [port, starboard] = taper.widths();
    format!(
        "{}; from the rectangle's fore edge. Width {} at port, {} at starboard",
        edges.join("; "),
        text(port),
        text(starboard)
    )
}

/// The arc of a round opening: all its sides lie on one circle.
pub(super) fn round(shape: &geometry::Path<()>) -> Option<Arc> {
    let first = shape.sides().first()?.arc?;
    shape.sides().iter().all(|side| side.arc.is_some_and(|arc| arc.centre == first.centre)).then_some(first)
}

pub(super) fn edge_name(edge: Edge) -> String {
    match edge {
        Edge::Notch => "motor notch".to_owned(),
        Edge::Seam { seam, member: Some(member) } => format!("seam S{seam} on M{member}"),
        Edge::Seam { seam, member: None } => format!("seam S{seam}"),
        Edge::Joint { joint } => format!("joint J{joint} on blocks"),
        Edge::Perimeter { rim } => match rim {
            Rim::Bow => "bow edge",
            Rim::BowCorner => "bow corner",
            Rim::Port => "port edge",
            Rim::Starboard => "starboard edge",
            Rim::Stern => "stern edge",
            Rim::Notch => "motor notch",
            Rim::Slot => "slot",
            Rim::Rim => "deck edge",
        }
        .to_owned(),
    }
}
