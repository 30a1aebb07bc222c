//! Which panels are one shape, and which sheets are sawn alike, so that they share a drawing.

use crate::geometry::Path;
use crate::nest::{CutSheet, Tree};
use crate::panels::Panel;

/// Panels of one shape, in the order of the plan; groups in the order of their first panel.
pub(super) fn panels(panels: &[Panel]) -> Vec<Vec<&Panel>> {
    let mut groups: Vec<Vec<&Panel>> = Vec::new();
    for panel in panels {
        match groups.iter_mut().find(|group| group.first().is_some_and(|first| same_shape(first, panel))) {
            Some(group) => group.push(panel),
            None => groups.push(vec![panel]),
        }
    }
    groups
}

/// Sheets that are sawn alike, in the order of the plan; groups in the order of their first sheet.
pub(super) fn sheets<'a>(sheets: &'a [CutSheet], panels: &[Panel]) -> Vec<Vec<&'a CutSheet>> {
    let mut groups: Vec<Vec<&CutSheet>> = Vec::new();
    for sheet in sheets {
        match groups.iter_mut().find(|group| group.first().is_some_and(|first| same_cuts(first, sheet, panels))) {
            Some(group) => group.push(sheet),
            None => groups.push(vec![sheet]),
        }
    }
    groups
}

/// True where one panel moved lies on the other, openings included.
pub(super) fn same_shape(a: &Panel, b: &Panel) -> bool {
    let openings = |panel: &Panel| -> Vec<Path<()>> {
        panel.openings.iter().map(|opening| at_origin(panel, &opening.shape)).collect()
    };
    a.strength_axis == b.strength_axis
        && at_origin(a, &a.shape.map(|_| ())) == at_origin(b, &b.shape.map(|_| ()))
        && openings(a) == openings(b)
}

/// A path with the panel's fore edge at station 0 and its port edge at 0.
pub(super) fn at_origin<T: Copy>(panel: &Panel, path: &Path<T>) -> Path<T> {
    path.moved(-panel.bounds.fore, -panel.bounds.port)
}

fn same_cuts(a: &CutSheet, b: &CutSheet, panels: &[Panel]) -> bool {
    let size = |sheet: &CutSheet| sheet.inside.as_ref().map(|inside| (inside.length, inside.width));
    a.stock == b.stock && size(a) == size(b) && same_tree(&a.cuts, &b.cuts, panels) && placed_alike(a, b)
}

fn placed_alike(a: &CutSheet, b: &CutSheet) -> bool {
    a.placements.len() == b.placements.len()
        && a.placements.iter().zip(&b.placements).all(|(a, b)| a.turned == b.turned)
}

fn same_tree(a: &Tree, b: &Tree, panels: &[Panel]) -> bool {
    match (a, b) {
        (Tree::Part { part: a }, Tree::Part { part: b }) => a == b || same_part(a, b, panels),
        (Tree::Offcut { .. }, Tree::Offcut { .. }) | (Tree::Waste { .. }, Tree::Waste { .. }) => true,
        (Tree::Cut(a), Tree::Cut(b)) => {
            (a.cut, a.at, a.kerf) == (b.cut, b.at, b.kerf)
                && same_tree(&a.children.0, &b.children.0, panels)
                && match (&a.children.1, &b.children.1) {
                    (Some(a), Some(b)) => same_tree(a, b, panels),
                    (None, None) => true,
                    _ => false,
                }
        }
        _ => false,
    }
}

fn same_part(a: &str, b: &str, panels: &[Panel]) -> bool {
    let find = |label: &str| panels.iter().find(|panel| panel.label == label);
    matches!((find(a), find(b)), (Some(a), Some(b)) if same_shape(a, b))
}
