//! The waste inside shaped parts, as stock that is there once its part is.
//!
//! A part is nested as the rectangle around its shape. Where a rectangle inside it is waste, that rectangle falls out
//! when the shape is sawn, and small parts can be sawn from it. So it is one more kind of stock, which costs nothing,
//! as often as its part is wanted; an answer that uses more of it than parts are placed is put right by [`ground`].
//!
//! ```text
//!   +--------------------------+        The part's own saw lines run in the waste. A side on the
//!   |  part      |-k-|-----|-k-|        part's edge loses nothing, every other side one kerf k.
//!   |            |   |fallen|  |
//!   |            +---+-----+---+  k
//!   +--------------------------+
//! ```
//!
//! A disc one kerf wide around any point of what falls out meets no wood of the part: within the part's rectangle it lies
//! in the waste. So a saw that follows the shape on its waste side leaves the rectangle whole, whatever the shape is.
//!
//! # Limits
//! A part that may lie either way on a sheet with grain leaves waste whose grain is not known beforehand: parts that the
//! grain locks are not offered it, and with a fixed first saw line nothing is.

use super::build::Solution;
use super::part::Part;
use super::problem::{Class, Problem, Rack, Size};
use super::result::Rectangle;
use crate::error::{Error, Fault, Faults, Kind};
use crate::length::Length;
use crate::stock::Saw;

/// Waste inside the parts of one class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Waste {
    /// The class of the parts that it is in.
    pub(super) class: u32,
    /// Its place in [`Part::inside`].
    pub(super) index: usize,
    /// True where the rack's length runs across the class's, because the parts lie only so where grain tells.
    pub(super) turned: bool,
}

/// The sizes of what falls out of a part as it lies in the nest's eyes: along the sheet's length, and across it.
pub(super) fn sizes(part: &Part, kerf: i64) -> Vec<Size> {
    let size = |waste: &Rectangle| {
        let fallen = part.fallen(waste, Length::from_nanometres(kerf));
        let (length, width) = (fallen.length.nanometres(), fallen.width.nanometres());
        if part.lies_across() { (width, length) } else { (length, width) }
    };
    part.inside.iter().map(size).collect()
}

/// Puts a rack for every waste that holds some part behind those of the stock.
///
/// No chain of parts inside waste inside parts closes to a ring: waste has less area than the part that it is in, and a
/// part in waste has no more area than the waste, so that areas fall along the chain. Taken from the largest class on,
/// every rack that may hold the parts of a class is there before their own waste is looked at.
pub(super) fn offer(parts: &[Part], classes: &[Class], racks: &mut Vec<Rack>, saw: &Saw) -> Vec<Waste> {
    let shaped = |class: &&(u32, &Class)| part_of(parts, class.1).is_some_and(|part| !part.inside.is_empty());
    let mut hosts: Vec<(u32, &Class)> = (0..).zip(classes).filter(|class| shaped(&class)).collect();
    hosts.sort_by_key(|(_, class)| std::cmp::Reverse(class.area));
    let kerf = saw.kerf.nanometres();
    let mut all = Vec::new();
    for (class, host) in hosts {
        let Some((part, lie)) = part_of(parts, host).zip(Lie::of(host, racks)) else { continue };
        if lie.unsure && saw.first.is_some() {
            continue;
        }
        let mut found = Vec::new();
        for (index, size) in sizes(part, kerf).into_iter().enumerate() {
            let size = if lie.turned { (size.1, size.0) } else { size };
            let rack = Rack {
                size: (size.0 + kerf, size.1 + kerf),
                grain: lie.grain,
                count: host.count,
                cost: 0,
                unsure: lie.unsure,
            };
            if size.0 > 0 && size.1 > 0 && classes.iter().any(|class| Problem::fits(class, &rack)) {
                found.push((rack, Waste { class, index, turned: lie.turned }));
            }
        }
        for (rack, waste) in found {
            racks.push(rack);
            all.push(waste);
        }
    }
    all
}

/// Any part of a class: they all have the same waste.
fn part_of<'p>(parts: &'p [Part], class: &Class) -> Option<&'p Part> {
    class.members.first().and_then(|&(index, _)| parts.get(index))
}

/// How the parts of a class may lie where there is grain.
struct Lie {
    grain: bool,
    turned: bool,
    unsure: bool,
}

impl Lie {
    /// None where no rack holds the class: then there is never any waste of it.
    fn of(class: &Class, racks: &[Rack]) -> Option<Lie> {
        let (mut fits, mut grained) = (false, [false; 2]);
        for rack in racks.iter().filter(|rack| rack.count > 0) {
            for (turned, lies) in class.lies(rack).into_iter().enumerate() {
                let holds = lies.is_some_and(|size| size.0 <= rack.size.0 && size.1 <= rack.size.1);
                fits |= holds;
                for (way, lies) in grained.iter_mut().enumerate() {
                    *lies |= holds && rack.grain && (rack.unsure || way == turned);
                }
            }
        }
        // A square lies the same way whichever way it is turned.
        let square = class.size.0 == class.size.1;
        let [as_is, turned] = grained;
        fits.then_some(Lie {
            grain: as_is || turned,
            turned: turned && !as_is && !square,
            unsure: as_is && turned && !square,
        })
    }
}

/// Takes back what lies in waste that is not there, because too few of its parts are placed.
///
/// The thinnest sheets go first. What they held may have brought waste itself, so this is done over until all is well;
/// each time a sheet less is left.
pub(super) fn ground(problem: &Problem, solution: &mut Solution) {
    if problem.waste.is_empty() || solution.left.iter().all(|&left| left == 0) {
        return;
    }
    while let Some((rack, excess)) = missing(problem, solution) {
        let thinnest = solution.runs.iter_mut().filter(|run| run.0.rack == rack).min_by_key(|run| run.0.area);
        let Some((pattern, times)) = thinnest else { return };
        let taken = excess.min(*times);
        *times -= taken;
        for &(class, copies) in &pattern.parts {
            if let Some(left) = solution.left.get_mut(class as usize) {
                *left = left.saturating_add(copies.saturating_mul(taken));
            }
        }
        solution.runs.retain(|run| run.1 > 0);
    }
}

/// The first rack of waste of which more is used than there is, and how much more.
fn missing(problem: &Problem, solution: &Solution) -> Option<(usize, u32)> {
    let there = there(problem, &solution.left);
    let racks = (problem.racks.len() - problem.waste.len()..).zip(there);
    racks
        .map(|(rack, there)| {
            let used: u32 = solution.runs.iter().filter(|run| run.0.rack == rack).map(|run| run.1).sum();
            (rack, used.saturating_sub(there))
        })
        .find(|(_, excess)| *excess > 0)
}

/// How much there is of each waste when so many copies of each class are left over.
pub(super) fn there(problem: &Problem, left: &[u32]) -> Vec<u32> {
    let placed = |class: u32| {
        let wanted = problem.classes.get(class as usize).map_or(0, |class| class.count);
        wanted - left.get(class as usize).map_or(wanted, |&left| left.min(wanted))
    };
    problem.waste.iter().map(|waste| placed(waste.class)).collect()
}

/// Checks the waste of a part whose sides are good; pointers are relative to the part.
pub(super) fn check(part: &Part) -> Result<(), Error> {
    let mut faults = Faults::new();
    for (index, waste) in part.inside.iter().enumerate() {
        let mut tell = |kind: Kind, field: &str, value: Length, message: String, accepted: &str| {
            let fault = Fault::new(kind, value.to_string(), message, accepted);
            faults.push(fault.within(field).within(index).within("inside"));
        };
        let sides = [("length", waste.length), ("width", waste.width)];
        if let Some((field, side)) = sides.into_iter().find(|(_, side)| *side <= Length::ZERO) {
            let kind = if side.is_zero() { Kind::LengthZero } else { Kind::LengthNegative };
            tell(kind, field, side, format!("{side} is no size of a piece of waste."), "A side is above zero.");
            continue;
        }
        let starts = [("x", waste.x), ("y", waste.y)];
        if let Some((field, start)) = starts.into_iter().find(|(_, start)| start.is_negative()) {
            tell(
                Kind::NestInside,
                field,
                start,
                format!("{start} lies outside the part."),
                "Zero or more is accepted.",
            );
            continue;
        }
        // The starts are known not to be negative: these differences cannot overflow.
        let reach = [("length", waste.length, part.length - waste.x), ("width", waste.width, part.width - waste.y)];
        if let Some((field, side, most)) = reach.into_iter().find(|(_, side, most)| side > most) {
            let message = format!("{side} reaches out of the part, which has {most} there.");
            tell(Kind::NestInside, field, side, message, "Waste lies within its part.");
            continue;
        }
        if (waste.length, waste.width) == (part.length, part.width) {
            let message = "The whole part is waste.".to_owned();
            tell(Kind::NestInside, "length", waste.length, message, "Something of the part is left.");
        }
        let earlier = part.inside.iter().take(index);
        if let Some(other) = earlier.into_iter().position(|other| overlap(waste, other)) {
            let message = format!("It overlaps the waste at place {other} of the list.");
            tell(Kind::NestInside, "x", waste.x, message, "Pieces of waste lie side by side.");
        }
    }
    faults.finish()
}

fn overlap(one: &Rectangle, other: &Rectangle) -> bool {
    // Behind the check of a rectangle sums are no longer than the part; the other may be a faulty one, told already.
    let meets = |a: Length, b: Length, c: Length, d: Length| a - c < d && c - a < b;
    meets(one.x, one.length, other.x, other.length) && meets(one.y, one.width, other.y, other.width)
}

#[cfg(test)]
mod tests {
    use super::super::{Effort, Grain, Nest, nest};
    use super::*;
    use crate::stock::{SawLine, Sheet, SheetGrain};

    fn inches(count: i64) -> Length {
        Length::inches(count)
    }

    fn waste(x: i64, y: i64, length: i64, width: i64) -> Rectangle {
        Rectangle::new(inches(x), inches(y), inches(length), inches(width))
    }

    /// A board of 102 by 48 with a motor notch of 30 by 24 in its aft edge.
    fn notched() -> Part {
        Part::new("5", inches(102), inches(48)).grain(Grain::Length).inside(vec![waste(36, 24, 30, 24)])
    }

    fn ply() -> Sheet {
        Sheet::new("ply", inches(102), inches(48))
    }

    fn saw() -> Saw {
        Saw::new().kerf("1/8 in".parse().unwrap())
    }

    fn quick(parts: &[Part], stock: &[Sheet], saw: &Saw) -> Nest {
        nest(parts, stock, saw, Effort::Quick).unwrap()
    }

    #[test]
    fn a_lid_is_sawn_from_the_notch() {
        let parts = [notched(), Part::new("lid", inches(20), inches(16)).grain(Grain::Length)];
        let nest = quick(&parts, &[ply()], &saw());
        assert_eq!((nest.sheet_count, nest.sheets.len(), nest.proven), (1, 2, true));
        let inside = nest.sheets[1].inside.as_ref().unwrap();
        assert_eq!((inside.part.as_str(), inside.sheet, inside.copy), ("5", 0, 0));
        assert_eq!(inside.placement, nest.sheets[0].placements[0]);
        // A kerf off the two sides and the fore edge, none off the aft edge.
        let eighth: Length = "1/8 in".parse().unwrap();
        let left =
            Rectangle::new(inches(36) + eighth, inches(24) + eighth, inches(30) - eighth * 2, inches(24) - eighth);
        assert_eq!(inside.waste, left);
        assert_eq!(nest.sheets[1].stock, "waste inside 5");
    }

    #[test]
    fn the_kerf_of_the_notch_is_not_there_twice() {
        let exact = |length: &str, width: &str| {
            let lid = Part::new("lid", length.parse().unwrap(), width.parse().unwrap()).grain(Grain::Length);
            quick(&[notched(), lid], &[ply()], &saw()).sheet_count
        };
        assert_eq!(exact("29-3/4 in", "23-7/8 in"), 1);
        assert_eq!(exact("29-13/16 in", "23-7/8 in"), 2);
        assert_eq!(exact("29-3/4 in", "23-15/16 in"), 2);
    }

    #[test]
    fn trim_is_not_taken_off_waste() {
        let trimmed = saw().trim("1/4 in".parse().unwrap());
        let sheet = Sheet::new("ply", "102-1/2 in".parse().unwrap(), "48-1/2 in".parse().unwrap());
        let lid = Part::new("lid", "29-3/4 in".parse().unwrap(), "23-7/8 in".parse().unwrap());
        assert_eq!(quick(&[notched(), lid], &[sheet], &trimmed).sheet_count, 1);
    }

    #[test]
    fn waste_of_a_part_that_is_not_placed_is_not_there() {
        let long = Part::new("long", inches(110), inches(48)).inside(vec![waste(0, 0, 60, 40)]);
        let small = Part::new("small", inches(50), inches(30));
        let nest = quick(&[long, small.clone()], &[ply().count(0)], &saw());
        assert_eq!((nest.sheets.len(), nest.unplaced.len()), (0, 2));
        // One of two boards is placed, and so one of two lids.
        let nest = quick(
            &[notched().count(2), small.count(0), Part::new("lid", inches(20), inches(16)).count(5)],
            &[ply().count(1)],
            &saw(),
        );
        let placed =
            |label: &str| nest.sheets.iter().flat_map(|sheet| &sheet.placements).filter(|p| p.part == label).count();
        assert_eq!((placed("5"), placed("lid")), (1, 1));
    }

    #[test]
    fn an_answer_that_counts_on_waste_that_is_not_there_is_put_right() {
        use super::super::build::{Node, Pattern};
        let lids = Part::new("lid", inches(20), inches(16)).count(2);
        let problem = Problem::new(&[notched().count(2), lids], &[ply()], &saw());
        let class = |area: i128| (0..).zip(&problem.classes).find(|(_, class)| class.area == area).unwrap().0;
        let square = i128::from(inches(1).nanometres()).pow(2);
        let (board, lid) = (class(102 * 48 * square), class(20 * 16 * square));
        let alone = |rack: usize, class: u32| {
            let area = problem.classes[class as usize].area;
            Pattern { rack, nodes: vec![Node::Part(class)], parts: vec![(class, 1)], area }
        };
        let mut left = vec![0; 2];
        left[board as usize] = 1;
        let cost = problem.racks[0].cost;
        let mut solution = Solution { runs: vec![(alone(0, board), 1), (alone(1, lid), 2)], left, cost };
        ground(&problem, &mut solution);
        assert_eq!((solution.runs[1].1, solution.left[lid as usize], solution.left[board as usize]), (1, 1, 1));
        // With no board at all there is no lid either.
        solution.runs.remove(0);
        solution.left[board as usize] = 2;
        ground(&problem, &mut solution);
        assert_eq!((solution.runs.len(), solution.left[lid as usize]), (0, 2));
    }

    #[test]
    fn waste_inside_waste_is_used() {
        let ring = Part::new("ring", inches(28), inches(22)).inside(vec![waste(4, 4, 20, 14)]);
        let core = Part::new("core", inches(19), inches(13)).inside(vec![waste(4, 4, 11, 5)]);
        let nest = quick(&[notched(), ring, core, Part::new("chip", inches(10), inches(4))], &[ply()], &saw());
        let chain: Vec<(usize, &str)> = nest
            .sheets
            .iter()
            .map(|sheet| (sheet.inside.as_ref().map_or(0, |inside| inside.sheet), sheet.placements[0].part.as_str()))
            .collect();
        assert_eq!(chain, [(0, "5"), (0, "ring"), (1, "core"), (2, "chip")]);
        assert!(nest.proven);
    }

    #[test]
    fn grain_runs_in_waste_as_it_runs_in_the_sheet() {
        // The board stands across: its width lies along the grain, so the notch is 24 along the grain and 30 across.
        let across = Part::new("5", inches(48), inches(102)).grain(Grain::Width).inside(vec![waste(24, 36, 24, 30)]);
        let lid = |grain: Grain| Part::new("lid", inches(28), inches(20)).grain(grain);
        for (grain, sheets) in [(Grain::Length, 1), (Grain::Width, 2), (Grain::Any, 1)] {
            let nest = quick(&[across.clone(), lid(grain)], &[ply()], &saw());
            assert_eq!(nest.sheet_count, sheets, "{grain:?}");
        }
    }

    #[test]
    fn a_part_that_may_turn_gives_waste_to_parts_that_may_turn() {
        // Of two slats one goes beside the frame, however that lies, and the other only into it.
        let frame = Part::new("frame", inches(40), inches(30)).inside(vec![waste(5, 5, 30, 10)]);
        let stock = [Sheet::new("ply", inches(42), inches(42)).count(1)];
        let slat = |grain: Grain| Part::new("slat", inches(29), inches(9)).grain(grain);
        let count = |grain, saw: &Saw| {
            let nest = quick(&[frame.clone(), slat(grain).count(2)], &stock, saw);
            nest.sheets.iter().filter(|sheet| sheet.inside.is_some()).count()
        };
        assert_eq!(count(Grain::Any, &Saw::new()), 1);
        assert_eq!(count(Grain::Length, &Saw::new()), 0);
        assert_eq!(count(Grain::Any, &Saw::new().first(SawLine::Length)), 0);
        // Where it can lie in one way only, the grain is known.
        let stock = [Sheet::new("ply", inches(48), inches(32))];
        let nest = quick(&[frame.clone(), slat(Grain::Length)], &stock, &Saw::new());
        assert_eq!((nest.sheet_count, nest.sheets.len()), (1, 2));
        let stock = [Sheet::new("ply", inches(32), inches(48)).grain(SheetGrain::Length)];
        let nest = quick(&[frame, slat(Grain::Width)], &stock, &Saw::new());
        assert_eq!((nest.sheet_count, nest.sheets.len()), (1, 2));
        assert_eq!(nest.sheets[1].placements[0].length, inches(9));
    }

    #[test]
    fn faulty_waste_is_told_where_it_is() {
        let told = |inside: Vec<Rectangle>| -> Vec<(String, Kind)> {
            let error = notched().inside(inside).check().unwrap_err();
            error.faults().map(|fault| (fault.pointer.clone(), fault.kind)).collect()
        };
        let at = |pointer: &str, kind: Kind| vec![(pointer.to_owned(), kind)];
        assert_eq!(told(vec![waste(0, 0, 0, 5)]), at("/inside/0/length", Kind::LengthZero));
        assert_eq!(told(vec![waste(0, -1, 5, 5)]), at("/inside/0/y", Kind::NestInside));
        assert_eq!(told(vec![waste(0, 0, 5, 5), waste(100, 0, 3, 5)]), at("/inside/1/length", Kind::NestInside));
        assert_eq!(told(vec![waste(0, 0, 102, 48)]), at("/inside/0/length", Kind::NestInside));
        assert_eq!(told(vec![waste(0, 0, 5, 5), waste(4, 4, 5, 5)]), at("/inside/1/x", Kind::NestInside));
        assert!(notched().inside(vec![waste(0, 0, 5, 5), waste(5, 0, 5, 5)]).check().is_ok());
    }
}
