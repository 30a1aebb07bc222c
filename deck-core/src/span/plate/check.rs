//! What a plate, its supports and its loads must be; behind this door nothing is checked again.

use super::load::{PlateLoad, PlateLoadKind};
use super::mesh::{Mesh, SAME};
use super::support::{Place, PlateSupport};
use super::{PlateProblem, Rigidity};
use crate::error::{Error, Fault, Faults, Kind};
use crate::span::solvable::{LARGEST, is_size, no_load, range, size};

/// How many times one side may be as long as the other, and one rigidity as large as the other.
const MOST_UNEVEN: f64 = 1e4;
/// Numbers in the factored equations, 160 megabytes.
const MOST_CELLS: usize = 20_000_000;
const MOST_SUPPORTS: usize = 1000;
const MOST_LOADS: usize = 10_000;
/// How far `dx νy` and `dy νx`, which are the same, may differ: handbooks round them.
const POISSON_SLACK: f64 = 0.02;

pub(super) fn problem(problem: &PlateProblem) -> Result<(), Error> {
    let mut faults = Faults::new();
    let Rigidity { dx, dy, .. } = problem.rigidity;
    for (value, field) in [(problem.length, "length"), (problem.width, "width"), (dx, "dx"), (dy, "dy")] {
        faults.take(size(value, &format!("A {field}")).map_err(|error| error.within(field)));
    }
    if let Some(mesh) = problem.mesh {
        faults.take(size(mesh, "A mesh").map_err(|error| error.within("mesh")));
    }
    if !faults.is_empty() {
        return faults.finish();
    }
    uneven(&mut faults, [problem.length, problem.width], "width", "side");
    uneven(&mut faults, [dx, dy], "dy", "rigidity");
    rigidity(&mut faults, &problem.rigidity);
    supports(&mut faults, problem);
    faults.finish()?;
    held(problem)
}

fn uneven(faults: &mut Faults, [a, b]: [f64; 2], field: &str, what: &str) {
    if a / b > MOST_UNEVEN || b / a > MOST_UNEVEN {
        let message = format!("One {what} is {a}, the other {b}.");
        let accepted = format!("Neither may be more than {MOST_UNEVEN} times the other.");
        faults.push(range(b, message, &accepted).within(field));
    }
}

fn rigidity(faults: &mut Faults, rigidity: &Rigidity) {
    let Rigidity { dx, dy, torsion, poisson: [nu_x, nu_y] } = *rigidity;
    let finite = nu_x.is_finite() && nu_y.is_finite();
    if !finite || nu_x * nu_y >= 1.0 || nu_x.abs().max(nu_y.abs()) > LARGEST {
        let message = format!("Poisson's ratios of {nu_x} and {nu_y} cannot be.");
        faults.push(
            fault(Kind::OutOfRange, format!("{nu_x}, {nu_y}"), message, "Their product is below 1.").within("poisson"),
        );
        return;
    }
    let (along, across) = (dx * nu_y, dy * nu_x);
    if (along - across).abs() > POISSON_SLACK * along.abs().max(across.abs()) {
        let message = format!("Poisson's ratios of {nu_x} and {nu_y} contradict the rigidities {dx} and {dy}.");
        let accepted = format!("dx · νy equals dy · νx: beside νx = {nu_x}, νy is {}.", dy * nu_x / dx);
        faults.push(fault(Kind::Conflict, format!("{nu_x}, {nu_y}"), message, accepted).within("poisson"));
        return;
    }
    if !(torsion >= along && torsion >= 0.0 && torsion <= MOST_UNEVEN * dx.max(dy)) {
        let message = format!("A torsion of {torsion} cannot be.");
        let accepted = format!("H = dx · νy + 2 Dxy lies between {} and {}.", along.max(0.0), MOST_UNEVEN * dx.max(dy));
        faults.push(range(torsion, message, &accepted).within("torsion"));
    }
}

fn supports(faults: &mut Faults, problem: &PlateProblem) {
    let count = problem.supports.len();
    if count == 0 {
        let accepted = "Give the members that it lies on.";
        faults
            .push(fault(Kind::EmptyList, "[]".into(), "The plate has no support.".into(), accepted).within("supports"));
    }
    if count > MOST_SUPPORTS {
        let accepted = format!("At most {MOST_SUPPORTS} are solved.");
        let message = format!("There are {count} supports.");
        faults.push(fault(Kind::TooMany, count.to_string(), message, accepted).within("supports"));
        return;
    }
    for (index, support) in problem.supports.iter().enumerate() {
        if let Some(fault) = support_fault(support, problem.sides()) {
            faults.push(fault.within(index).within("supports"));
        }
    }
}

fn support_fault(support: &PlateSupport, sides: [f64; 2]) -> Option<Fault> {
    let stretches = support.stretches(sides);
    for (axis, [from, to]) in stretches.into_iter().enumerate() {
        let slack = SAME * sides[axis];
        let field = match (support.place, support.normal() == Some(axis)) {
            (Place::Point { .. }, _) => "at",
            (Place::Across { .. }, true) => "x",
            (Place::Along { .. }, true) => "y",
            _ => "between",
        };
        if !(from >= -slack && to <= sides[axis] + slack) {
            let message = format!("A support from {from} to {to} does not lie on the plate.");
            let accepted = format!("It lies between 0 and {}.", sides[axis]);
            return Some(fault(Kind::OutOfRange, format!("{from}, {to}"), message, accepted).within(field));
        }
        if field == "between" && to - from <= slack {
            let message = format!("A support from {from} to {to} has no length.");
            return Some(
                fault(Kind::OutOfRange, format!("{from}, {to}"), message, "Its end lies beyond its beginning.")
                    .within(field),
            );
        }
    }
    None
}

/// Tells whether the supports hold the plate: of all shapes that cost no energy (planes, and the saddle `x y` where
/// there is no torsion) none may be left free.
fn held(problem: &PlateProblem) -> Result<(), Error> {
    let sides = problem.sides();
    let shapes = if problem.rigidity.torsion > problem.rigidity.coupling() { 3 } else { 4 };
    let rows = problem.supports.iter().flat_map(|support| {
        let [xs, ys] = support.stretches(sides);
        let corners = [[xs[0], ys[0]], [xs[1], ys[1]]].map(|[x, y]| [x / sides[0], y / sides[1]]);
        let turned = support.clamped.then_some(support.normal()).flatten();
        let value = corners.map(|[x, y]| [1.0, x, y, x * y]);
        let slope = corners.map(|[x, y]| if turned == Some(0) { [0.0, 1.0, 0.0, y] } else { [0.0, 0.0, 1.0, x] });
        value.into_iter().chain(slope.into_iter().filter(move |_| turned.is_some()))
    });
    if rank(rows.map(|row| row[..shapes].to_vec()).collect()) == shapes {
        return Ok(());
    }
    let message = "The supports let the plate move as a whole.";
    let accepted = "Two parallel lines hold it, or lines and points that do not lie on one line, or a clamped line.";
    Err(fault(Kind::Conflict, problem.supports.len().to_string(), message.into(), accepted).within("supports").into())
}

/// Rank by elimination, the largest cell first; cells below 1e-9 of a unit count as none.
fn rank(mut rows: Vec<Vec<f64>>) -> usize {
    let columns = rows.first().map_or(0, Vec::len);
    for rank in 0..columns {
        let cells = (rank..rows.len()).flat_map(|row| (rank..columns).map(move |column| (row, column)));
        let largest = cells.max_by(|&(a, b), &(c, d)| rows[a][b].abs().total_cmp(&rows[c][d].abs()));
        let Some((row, column)) = largest.filter(|&(row, column)| rows[row][column].abs() > SAME) else { return rank };
        rows.swap(rank, row);
        for row in &mut rows {
            row.swap(rank, column);
        }
        let pivot = rows[rank].clone();
        for row in rows.iter_mut().skip(rank + 1) {
            let factor = row[rank] / pivot[rank];
            row.iter_mut().zip(&pivot).for_each(|(cell, above)| *cell -= factor * above);
        }
    }
    columns
}

/// The mesh is small enough to be solved.
pub(super) fn mesh(problem: &PlateProblem, mesh: &Mesh) -> Result<(), Error> {
    let [a, b] = mesh.sides.each_ref().map(|side| side.lines.len());
    let cells = a.saturating_mul(b).saturating_mul(16).saturating_mul(a.min(b).saturating_add(3));
    if cells <= MOST_CELLS {
        return Ok(());
    }
    let message = format!("The mesh has {} by {} elements.", a - 1, b - 1);
    let value = problem.mesh.map_or(String::new(), |size| size.to_string());
    Err(fault(Kind::TooMany, value, message, "Give a larger size, or fewer supports.").within("mesh").into())
}

/// Checks the loads that stand under `field` of a sound problem.
pub(super) fn loads(problem: &PlateProblem, loads: &[PlateLoad], field: &str) -> Result<(), Error> {
    if loads.len() > MOST_LOADS {
        let message = format!("There are {} loads.", loads.len());
        let accepted = format!("At most {MOST_LOADS} are solved.");
        return Err(fault(Kind::TooMany, loads.len().to_string(), message, accepted).within(field).into());
    }
    let mut faults = Faults::new();
    for (index, load) in loads.iter().enumerate() {
        if let Some(fault) = load_fault(load, problem.sides()) {
            faults.push(fault.within(index).within(field));
        }
    }
    faults.finish()
}

/// The size and force of a load that may stand anywhere.
pub(super) fn moving(problem: &PlateProblem, load: &PlateLoad) -> Result<(), Error> {
    let sides = problem.sides();
    if load.value < 0.0 {
        return Err(range(load.value, format!("A load of {} lifts.", load.value), "Downward is positive.")
            .within("value")
            .into());
    }
    // In the middle of the plate: where it does not fit there, its size is what is wrong.
    load_fault(load, sides).map_or(Ok(()), |fault| {
        let size = load.size.unwrap_or_default();
        if !fault.pointer.starts_with("/at") {
            return Err(fault.into());
        }
        let message = format!("A load of {} by {} does not fit the plate.", size[0], size[1]);
        let accepted = format!("It covers {} by {} at most.", sides[0], sides[1]);
        Err(self::fault(Kind::OutOfRange, format!("{}, {}", size[0], size[1]), message, accepted).within("size").into())
    })
}

/// The distance between places that are tried.
pub(super) fn step(step: f64) -> Result<(), Error> {
    let mut faults = Faults::new();
    faults.take(size(step, "A step").map_err(|error| error.within("step")));
    faults.finish()
}

/// The number of places that are tried.
pub(super) fn places(count: usize, most: usize) -> Result<(), Error> {
    if count <= most {
        return Ok(());
    }
    let message = format!("There are {count} places to try.");
    Err(fault(Kind::TooMany, count.to_string(), message, format!("At most {most} are tried.")).within("step").into())
}

fn load_fault(load: &PlateLoad, sides: [f64; 2]) -> Option<Fault> {
    if let Some(fault) = no_load(load.value) {
        return Some(fault);
    }
    if load.at.is_none() && (load.kind != PlateLoadKind::Uniform || load.size.is_some()) {
        let accepted = "Give where its middle lies, along the length and along the width.";
        return Some(fault(Kind::MissingField, String::new(), "A load has no place.".into(), accepted).within("at"));
    }
    size_fault(load).map(|fault| fault.within("size")).or_else(|| outside(load, sides))
}

fn size_fault(load: &PlateLoad) -> Option<Fault> {
    let given = |[a, b]: [f64; 2]| format!("{a}, {b}");
    match (load.kind, load.size) {
        (PlateLoadKind::Point, Some(size)) => Some(fault(
            Kind::Conflict,
            given(size),
            "A point load has a size.".into(),
            "Leave it out, or let it be a patch.",
        )),
        (PlateLoadKind::Point, None) => None,
        (PlateLoadKind::Uniform, None) if load.at.is_none() => None,
        (_, None) => {
            let accepted = "Give what it covers along the length and along the width.";
            Some(fault(Kind::MissingField, String::new(), "A load that lies somewhere has no size.".into(), accepted))
        }
        (PlateLoadKind::Line, Some([a, b])) if (is_size(a) && b == 0.0) || (a == 0.0 && is_size(b)) => None,
        (PlateLoadKind::Line, Some(size)) => {
            let accepted = "One number is the line's length, the other zero.";
            Some(fault(Kind::OutOfRange, given(size), format!("A line of {} cannot be.", given(size)), accepted))
        }
        (_, Some(size)) if size.into_iter().all(is_size) => None,
        (_, Some(size)) => {
            let message = format!("A load over {} cannot be.", given(size));
            Some(fault(Kind::OutOfRange, given(size), message, "Both numbers are above zero."))
        }
    }
}

fn outside(load: &PlateLoad, sides: [f64; 2]) -> Option<Fault> {
    let stretch = |axis: usize| load.stretch(axis, sides[axis]);
    let inside = |axis: usize| {
        let ((from, to), slack) = (stretch(axis), SAME * sides[axis]);
        from >= -slack && to <= sides[axis] + slack
    };
    let axis = (0..2).find(|&axis| !inside(axis))?;
    let (from, to) = stretch(axis);
    let message = format!("A load covers {from} to {to}, which is not all on the plate.");
    let accepted = format!("It lies between 0 and {}.", sides[axis]);
    Some(range(load.at?[axis], message, &accepted).within(axis).within("at"))
}

fn fault(kind: Kind, value: String, message: String, accepted: impl Into<String>) -> Fault {
    Fault::new(kind, value, message, accepted)
}
