//! A section of the job, with the places at which the items of its lists stand: those with a fault are left out, and the
//! pointers of the others must not shift.

use super::Notes;
use super::at::{At, Object};
use super::panel::sound;

/// A section with the places of its items, by the list's name. A list that is not named has its items in their own places.
#[derive(Debug, Clone)]
pub(in crate::job) struct Placed<T> {
    pub(in crate::job) spec: T,
    pub(in crate::job) places: Places,
}

/// Places of items, by the name of their list.
pub(in crate::job) type Places = Vec<(&'static str, Vec<usize>)>;

/// The place of an item in the input.
pub(in crate::job) fn place(places: &Places, list: &str, index: usize) -> usize {
    let listed = places.iter().find(|(name, _)| *name == list);
    listed.and_then(|(_, places)| places.get(index).copied()).unwrap_or(index)
}

/// A list of things in which nothing is at fault; their places are kept.
pub(super) fn list<T>(
    fields: &mut Object<'_>,
    name: &'static str,
    notes: &mut Notes,
    places: &mut Places,
    read: impl Fn(&mut Object<'_>, &mut Notes) -> Option<T>,
) -> Option<Vec<T>> {
    let listed = fields.optional(name, notes, |at: &At<'_>, notes| {
        at.list(notes, |at, notes| sound(at, notes, |fields, notes| read(fields, notes)))
    })?;
    places.push((name, listed.positions));
    Some(listed.items)
}
