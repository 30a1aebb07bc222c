//! Puts faults into the order of the document, and leaves out those that only follow from others.

use crate::error::{Error, Fault, Faults, Kind};
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};

/// Those of `news` that say nothing again, of the same field or of a part of it, that `told` has said.
pub(super) fn unsaid(news: &Error, told: &[Fault]) -> Vec<Fault> {
    let told: BTreeSet<&str> = told.iter().map(|fault| fault.pointer.as_str()).collect();
    let said = |pointer: &str| {
        let ends = pointer.match_indices('/').map(|(end, _)| end).skip(1).chain([pointer.len()]);
        ends.filter_map(|end| pointer.get(..end)).any(|part| told.contains(part))
    };
    news.faults().filter(|fault| !said(&fault.pointer)).cloned().collect()
}

/// Sorts faults by where they stand in the document; what is missing there comes last in its object.
pub(super) fn in_order(root: &Value, faults: Vec<Fault>) -> Error {
    let mut order = Order::default();
    let mut placed: Vec<(Vec<usize>, Fault)> =
        faults.into_iter().map(|fault| (order.place(root, &fault.pointer), fault)).collect();
    placed.sort_by(|(one, _), (other, _)| one.cmp(other));
    let mut all = Faults::new();
    for (_, fault) in placed {
        all.push(fault);
    }
    match all.finish() {
        Err(error) => error,
        // unreachable: it is called with a fault at least.
        Ok(()) => Fault::new(Kind::NotJson, "", "The job cannot be read.", "").into(),
    }
}

/// The places of fields among their neighbours, of each object that was asked for, so that many faults of one object are
/// placed without going over its fields for each.
#[derive(Default)]
struct Order<'a> {
    fields: BTreeMap<*const Map<String, Value>, BTreeMap<&'a str, usize>>,
}

impl<'a> Order<'a> {
    /// The path to a pointer's place, each step as its position among its neighbours.
    fn place(&mut self, root: &'a Value, pointer: &str) -> Vec<usize> {
        let mut steps = Vec::new();
        let mut here = Some(root);
        for step in pointer.split('/').skip(1) {
            let name = step.replace("~1", "/").replace("~0", "~");
            let found = match here {
                Some(Value::Object(map)) => self.position(map, &name).zip(map.get(&name)),
                Some(Value::Array(list)) => name.parse().ok().and_then(|index: usize| Some((index, list.get(index)?))),
                _ => None,
            };
            steps.push(found.map_or(usize::MAX, |(index, _)| index));
            here = found.map(|(_, value)| value);
        }
        steps
    }

    fn position(&mut self, map: &'a Map<String, Value>, name: &str) -> Option<usize> {
        let fields = self
            .fields
            .entry(std::ptr::from_ref(map))
            .or_insert_with(|| map.keys().enumerate().map(|(index, key)| (key.as_str(), index)).collect());
        fields.get(name).copied()
    }
}
