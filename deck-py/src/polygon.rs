//! Closed paths as `GeoJSON`-like polygons, in the job's unit.

use deck_core::Unit;
use deck_core::geometry::{Path, Point, polygon::TOLERANCE};
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyTuple};

/// The polygon of an edge and the holes in it; arcs are chords within the library's tolerance of them.
///
/// Each ring ends where it starts. The edge runs with the inside on its left and the holes the other way, as RFC 7946
/// has it.
pub(crate) fn polygon<'py, T: Copy>(
    py: Python<'py>,
    edge: &Path<T>,
    holes: impl Iterator<Item = Path<()>>,
    unit: Unit,
) -> PyResult<Bound<'py, PyDict>> {
    let outer = edge.flatten(TOLERANCE);
    let inner = holes.map(|hole| hole.flatten(TOLERANCE).into_iter().rev().collect());
    let rings = std::iter::once(outer).chain(inner);
    let rings = rings.map(|corners: Vec<Point>| ring(py, &corners, unit)).collect::<PyResult<Vec<_>>>()?;
    let polygon = PyDict::new(py);
    polygon.set_item("type", "Polygon")?;
    polygon.set_item("coordinates", PyTuple::new(py, rings)?)?;
    Ok(polygon)
}

fn ring<'py>(py: Python<'py>, corners: &[Point], unit: Unit) -> PyResult<Bound<'py, PyTuple>> {
    let closed: Vec<(f64, f64)> =
        corners.iter().chain(corners.first()).map(|point| (point.x.number(unit), point.y.number(unit))).collect();
    PyTuple::new(py, closed)
}
