//! Random boats that a job file may describe: every measure within what the library accepts.

use crate::boat::{Boat, Bow, Hole, Member, Notch, Reading};
use proptest::prelude::*;

/// An inch, in 64ths.
const INCH: i64 = 64;
/// An eighth of an inch, in 64ths.
const EIGHTH: i64 = 8;
/// Openings lie in fields of this depth, two abreast, so that they never overlap.
const FIELD: i64 = 30 * INCH;

fn eighths(least: i64, most: i64) -> impl Strategy<Value = i64> {
    (least * 8..=most * 8).prop_map(|count| count * EIGHTH)
}

prop_compose! {
    fn bows()(kind in 0..4, size in eighths(1, 20)) -> Bow {
        match kind {
            0 => Bow::Square,
            1 => Bow::Clip(size),
            _ => Bow::Radius(size),
        }
    }
}

prop_compose! {
    /// A notch in a stern of a beam.
    fn notches(beam: i64)(
        width in eighths(12, 40),
        depth in eighths(5, 30),
        place in prop::option::of(0.0..1.0_f64),
        inside in prop::sample::select(vec![0, 2, 3]),
        stern in prop::sample::select(vec![0, 0, 1, 2]),
    ) -> Notch {
        let stern = stern * INCH;
        // At least three eighths of deck beside it, outside the stern radius.
        let room = beam - width - 2 * stern - 6 * EIGHTH;
        #[allow(clippy::cast_possible_truncation, reason = "a fraction of a beam")]
        let from_port = place.map(|place| stern + 3 * EIGHTH + (room as f64 * place) as i64 / EIGHTH * EIGHTH);
        Notch { width, depth, from_port, inside: inside * INCH, stern }
    }
}

/// Spacing with unevenness, flange of each member, ends of each member.
type Bays = Vec<(i64, i64, Option<(i64, i64)>)>;

fn bays() -> impl Strategy<Value = Bays> {
    let own_flange = prop_oneof![4 => Just(0), 1 => 80..200_i64];
    let own_ends = prop::option::weighted(0.1, (0..4 * INCH, 0..4 * INCH));
    prop::collection::vec((-3 * INCH..3 * INCH, own_flange, own_ends), 30)
}

/// Members from a first station aft, as many as the deck takes, none nearer to the next than its flange.
fn members(first: i64, spacing: i64, bays: &Bays, length: i64, beam: i64) -> Vec<Member> {
    let mut station = first;
    let mut members = Vec::new();
    for &(uneven, flange, ends) in bays {
        if station > length - 2 * INCH {
            break;
        }
        let ends = ends.map_or((None, None), |(port, starboard)| (Some(port), Some(beam - starboard)));
        members.push(Member { station: station / 2 * 2, flange: flange / 2 * 2, ends });
        station += spacing + uneven;
    }
    members.push(Member { station: length - INCH, flange: 0, ends: (None, None) });
    // The last reading may fall on the one before.
    if let [.., before, last] = members.as_slice()
        && last.station - before.station < 5 * INCH
    {
        members.remove(members.len() - 2);
    }
    members
}

/// What is wished in a field: whether a round opening, how deep and wide and where, from 0 to 1, and its corner radius.
type Wish = (bool, [f64; 4], i64);

/// Openings in fields of the deck between two stations.
fn holes(fore: i64, aft: i64, beam: i64, wishes: &[Option<Wish>]) -> Vec<Hole> {
    let fields = (0..).map(|k| fore + k * FIELD).take_while(|x| x + FIELD <= aft).flat_map(|x| [(x, 0), (x, beam / 2)]);
    let hole = |((x, y), wish): ((i64, i64), &Option<Wish>)| {
        let (round, [depth, width, along, across], radius) = (*wish)?;
        #[allow(clippy::cast_possible_truncation, reason = "a fraction of a field")]
        let part = |of: i64, part: f64| (of as f64 * part) as i64 / EIGHTH * EIGHTH;
        // An eighth of deck is left all around the field.
        let (long, wide) = (FIELD - 2 * EIGHTH, beam / 2 - 2 * EIGHTH);
        let depth = INCH + part(long - INCH, depth * depth);
        let width = INCH + part(wide - INCH, width * width);
        let (depth, width) = if round { (depth.min(width), depth.min(width)) } else { (depth, width) };
        let (x, y) = (x + EIGHTH + part(long - depth, along), y + EIGHTH + part(wide - width, across));
        Some(if round {
            Hole::Round([x + depth / 2, y + depth / 2, depth])
        } else {
            Hole::Rectangle([x, y, depth, width, radius.min(depth / 2).min(width / 2)])
        })
    };
    fields.zip(wishes).filter_map(hole).collect()
}

fn wishes() -> impl Strategy<Value = Vec<Option<Wish>>> {
    let wish = (any::<bool>(), prop::array::uniform4(0.0..1.0_f64), 0..3 * INCH);
    prop::collection::vec(prop::option::weighted(0.3, wish), 24)
}

prop_compose! {
    fn screws()(
        diameter in prop::sample::select(vec![12_i64, 16]),
        edge in 4..14_i64,
        field in 6..18_i64,
        in_ply in prop::sample::select(vec![24_i64, 24, 32]),
        end in prop::sample::select(vec![32_i64, 64, 64, 96]),
    ) -> [i64; 5] {
        [diameter, edge * INCH, field * INCH, in_ply, end]
    }
}

prop_compose! {
    /// What does not depend on the hull: gap, tolerance, bearing, least width, trim.
    fn rules()(
        gap in prop::sample::select(vec![0_i64, 4, 8]),
        tolerance in prop::sample::select(vec![0_i64, 0, 4, 8]),
        bearing in prop::sample::select(vec![24_i64, 32]),
        least_width in prop::sample::select(vec![6_i64, 12]),
        trim in prop::sample::select(vec![0_i64, 0, 8]),
    ) -> [i64; 5] {
        [gap, tolerance, bearing, least_width * INCH, trim]
    }
}

prop_compose! {
    /// Lengths and beams of boats.
    fn hulls()(length in eighths(60, 340), beam in eighths(40, 60))(
        length in Just(length),
        // Twice a whole number of eighths: the middle is whole.
        beam in Just(beam * 2),
        bow in bows(),
        taper in prop::option::weighted(0.3, (eighths(20, 50), eighths(1, 12))),
        notch in prop::option::weighted(0.4, notches(beam * 2)),
    ) -> (i64, i64, Bow, Option<(i64, i64)>, Option<Notch>) {
        (length, beam, bow, taper.map(|(run, rise)| (run, beam - 2 * rise)), notch)
    }
}

prop_compose! {
    /// Any boat. About one in five cannot be laid out from its sheets.
    pub fn boats()(
        hull in hulls(),
        first in -INCH..4 * INCH,
        spacing in eighths(10, 26),
        bays in bays(),
        flange in prop::sample::select(vec![80_i64, 112, 128, 128, 160]),
        reading in prop::sample::select(vec![Reading::Centre, Reading::ForeEdge, Reading::WebAft, Reading::WebFore]),
        wishes in wishes(),
        zone in prop::option::weighted(0.2, (eighths(20, 60), eighths(1, 20))),
        sheet in prop::sample::select(vec![48 * INCH, 48 * INCH - 4, 60 * INCH]),
        rules in rules(),
        screw in screws(),
        stagger in any::<bool>(),
    ) -> Boat {
        let (length, beam, bow, taper, notch) = hull;
        let [gap, tolerance, bearing, least_width, trim] = rules;
        let corner = match bow { Bow::Square => 0, Bow::Radius(size) | Bow::Clip(size) => size };
        let fore = taper.map_or(corner, |(run, _)| run.max(corner) + corner);
        let aft = length - notch.map_or(0, |notch| notch.depth);
        // A flange that is read to its aft edge must still reach the deck at the bow.
        let first = if reading == Reading::WebFore { first.abs() + INCH } else { first.max(-flange / 4) };
        Boat {
            length,
            beam,
            bow,
            taper,
            notch,
            flange,
            reading,
            members: members(first, spacing, &bays, length, beam),
            holes: holes(fore, aft, beam, &wishes),
            zones: zone.map(|(from, depth)| (from, from + depth)).into_iter().filter(|zone| zone.0 < length).collect(),
            sheets: vec![(beam + 2 * trim, sheet)],
            gap,
            tolerance,
            bearing,
            least_width,
            trim,
            screw,
            stagger,
        }
    }
}
