//! What is written and read again is the same job, whatever its unit and however odd its lengths.

use crate::frame::{Condition, Facing, FrameSpec, MeasuredTo, MemberSpec, Profile};
use crate::geometry::Point;
use crate::job::{
    BlockingPlaces, DamageSpec, DeckEnd, DeckSide, Face, FasteningSpec, FittingSpec, FittingsSpec, Job, OldDatumSpec,
    OldHolesSpec, OpeningRulesSpec, Paper, PatchSpec, PlateSpec, SawSpec, ShopSpec, SkewSpec,
};
use crate::length::{JsonForm, Length, Unit, with_json_form};
use crate::money::Money;
use crate::outline::{BowCorner, Deck, KeepClear, Lid, Notch, Opening, OpeningShape, Parametric};
use crate::stock::{SawLine, Sheet, SheetGrain, Treatment};
use proptest::prelude::*;

/// A length between two counts of inches: on a tape's marks, in millimetres, or on none.
fn length(least: i64, most: i64) -> impl Strategy<Value = Length> {
    let (low, high) = (Length::inches(least).nanometres(), Length::inches(most).nanometres());
    (low..=high, 0..3_u8).prop_map(|(nanometres, grid)| match grid {
        0 => Length::from_nanometres(nanometres - nanometres % 396_875),
        1 => Length::from_nanometres(nanometres - nanometres % 1_000_000),
        _ => Length::from_nanometres(nanometres),
    })
}

fn maybe<T: std::fmt::Debug>(strategy: impl Strategy<Value = T>) -> impl Strategy<Value = Option<T>> {
    proptest::option::of(strategy)
}

prop_compose! {
    fn member(station: Length)(
        condition in prop_oneof![Just(Condition::Sound), Just(Condition::Cut), Just(Condition::Bent)],
        flange in maybe(length(1, 3)),
        wall in maybe(length(1, 2)),
        ends in maybe((length(0, 5), length(80, 90))),
    ) -> MemberSpec {
        let mut member = MemberSpec::new(station).condition(condition);
        (member.flange, member.wall) = (flange, wall);
        (member.port_end, member.starboard_end) = ends.unzip();
        member
    }
}

/// The frame, and a deck length that it fits.
fn frame() -> impl Strategy<Value = (FrameSpec, Length)> {
    let stations = proptest::collection::vec(length(12, 24), 8..14).prop_map(|bays| {
        let sums = bays.iter().scan(Length::ZERO, |at, bay| {
            *at += *bay;
            Some(*at)
        });
        std::iter::once(Length::ZERO).chain(sums).collect::<Vec<Length>>()
    });
    let profile = prop_oneof![Just(Profile::C), Just(Profile::Hat), Just(Profile::Z)];
    (stations, profile, length(1, 3)).prop_flat_map(|(stations, profile, flange)| {
        let deck = *stations.last().unwrap() + Length::inches(4);
        stations.into_iter().map(member).collect::<Vec<_>>().prop_map(move |members| {
            let mut spec = FrameSpec::centred([], flange).measured_to(MeasuredTo::Web);
            spec = spec.profile(profile, Some(Facing::Aft));
            spec.members = members;
            (spec, deck)
        })
    })
}

fn bow() -> impl Strategy<Value = Option<BowCorner>> {
    maybe(prop_oneof![length(1, 12).prop_map(BowCorner::Radius), length(1, 12).prop_map(BowCorner::Clip)])
}

prop_compose! {
    fn sheet()(
        size in (length(90, 120), length(40, 60)),
        scant in maybe(length(0, 1)),
        count in maybe(any::<u32>()),
        price in maybe(0..10_000_000_i64),
        grain in prop_oneof![Just(SheetGrain::Length), Just(SheetGrain::None)],
        treatment in maybe(prop_oneof![Just(Treatment::None), Just(Treatment::MicronizedCopper)]),
        offcut in any::<bool>(),
        label in "[ -~]{0,12}",
    ) -> Sheet {
        let mut sheet = Sheet::new(label, size.0, size.1).grain(grain).offcut(offcut);
        sheet = sheet.thickness(Length::inch_fraction(3, 4));
        if let Some(scant) = scant {
            sheet = sheet.measured(size.0 - scant, size.1);
        }
        (sheet.count, sheet.treatment) = (count, treatment);
        sheet.price = price.map(|price| Money::from_ten_thousandths(i128::from(price)));
        sheet
    }
}

prop_compose! {
    fn fastening()(
        kind in maybe("\\PC{0,8}"), diameter in maybe(length(1, 1)), length_ in maybe(length(2, 4)),
        threads in maybe(1..=100_u32), edge in maybe(length(1, 24)), end in maybe(length(0, 3)),
        stagger in maybe(any::<bool>()), per_box in maybe(1..5000_u32),
    ) -> FasteningSpec {
        let mut spec = FasteningSpec::new();
        (spec.kind, spec.diameter, spec.length, spec.threads_per_inch) = (kind, diameter, length_, threads);
        (spec.edge_spacing, spec.end_distance, spec.stagger, spec.per_box) = (edge, end, stagger, per_box);
        (spec.old_hole_clear, spec.reuse_old_holes) = (per_box.map(|count| f64::from(count % 40) / 8.0), stagger);
        spec
    }
}

prop_compose! {
    fn saw()(
        kerf in maybe(length(0, 1)), trim in maybe(length(0, 1)), stages in maybe(1..=3_u8),
        first in maybe(prop_oneof![Just(SawLine::Length), Just(SawLine::Width)]),
        keep in maybe((length(0, 24), length(0, 24))),
        face in maybe(prop_oneof![Just(Face::Up), Just(Face::Down)]),
    ) -> SawSpec {
        let mut spec = SawSpec::new();
        (spec.kerf, spec.trim, spec.stages, spec.first, spec.keep, spec.face) = (kerf, trim, stages, first, keep, face);
        spec
    }
}

prop_compose! {
    fn shop()(
        power in maybe(1..=6_u32), feet in maybe(any::<bool>()), bearing in maybe(length(0, 1)),
        supports in maybe(2..=20_u32), coverage in maybe(length(1, 5000)), barrier in maybe(any::<bool>()),
        paper in maybe(prop_oneof![Just(Paper::Letter), Just(Paper::A4)]),
    ) -> ShopSpec {
        let mut spec = ShopSpec::new();
        (spec.fractions, spec.feet, spec.least_bearing) = (power.map(|power| 1 << power), feet, bearing);
        (spec.preferred_supports, spec.edge_sealer_coverage) = (supports, coverage);
        (spec.barrier, spec.paper) = (barrier, paper);
        spec
    }
}

prop_compose! {
    /// What the old deck left, and what is bolted down again.
    fn leftovers()(
        holes in proptest::collection::vec((1..9_u32, proptest::collection::vec(length(0, 95), 0..4), length(1, 2)), 0..3),
        skew in maybe((length(100, 300), length(-2, 2))),
        from in maybe(prop_oneof![Just(DeckEnd::Bow), Just(DeckEnd::Stern)]),
        side in maybe(prop_oneof![Just(DeckSide::Port), Just(DeckSide::Starboard)]),
        at in (length(-3, 3), length(-3, 3)),
        bolt in (length(1, 2), maybe(length(0, 1)), maybe(length(0, 2)), maybe((length(3, 6), length(1, 3), 1..=100_u32))),
        points in proptest::collection::vec((length(0, 90), length(0, 90)), 0..4),
        sold in maybe(proptest::collection::vec(length(1, 6), 0..4)),
    ) -> (Vec<OldHolesSpec>, FittingsSpec) {
        let holes = holes.into_iter().map(|(member, y, diameter)| OldHolesSpec::new(member, y, diameter)).collect();
        let mut datum = OldDatumSpec::new(at.0, at.1);
        datum.skew = skew.map(|(over, to_starboard)| SkewSpec { over, to_starboard });
        (datum.from, datum.side) = (from, side);
        let points = points.into_iter().map(|(x, y)| Point::new(x, y)).collect();
        let mut rail = FittingSpec::new("rail", bolt.0, points);
        (rail.bolt.foot, rail.bolt.nut) = (bolt.1, bolt.2);
        rail.bolt.plate = bolt.3.map(|(length, width, bolts)| {
            PlateSpec { length, width, thickness: width, bolts: Some(bolts) }
        });
        let mut fittings = FittingsSpec::new(vec![rail]).old_datum(datum);
        fittings.bolt_lengths = sold;
        (holes, fittings)
    }
}

prop_compose! {
    fn job()(
        name in "\\PC{0,12}",
        unit in proptest::sample::select(Unit::ALL.to_vec()),
        (frame, deck_length) in frame(),
        beam in length(95, 120),
        bow in bow(),
        notch in maybe((length(10, 30), length(6, 20), length(0, 3))),
        hole in maybe((length(40, 60), length(40, 60), length(1, 10), any::<bool>())),
        zone in maybe((length(0, 40), length(41, 90))),
        mut stock in proptest::collection::vec(sheet(), 1..4),
        gap in maybe(length(0, 1)),
        fastening in fastening(),
        saw in saw(),
        shop in shop(),
        (leftovers, lid, rules) in (
            maybe(leftovers()),
            maybe((any::<bool>(), maybe(1..=4_u32))),
            maybe((maybe(length(0, 3)), maybe(0..160_u32), maybe(length(1, 4)))),
        ),
    ) -> Job {
        let mut deck = Parametric::new(deck_length, beam);
        deck.bow = bow;
        deck.notch = notch.map(|(width, depth, radius)| Notch::new(width, depth).inside_radius(radius));
        let priced = stock.iter().all(|sheet| sheet.price.is_some());
        for (index, sheet) in stock.iter_mut().enumerate() {
            sheet.label.push_str(&index.to_string());
            sheet.price = sheet.price.filter(|_| priced);
        }
        let mut job = Job::new(name, unit, Deck::Parametric(deck), frame, stock).fastening(fastening).saw(saw).shop(shop);
        job.gap = gap;
        job.openings.extend(hole.map(|(x, y, size, framed)| {
            let shape = if framed {
                OpeningShape::Rectangle { x, y, depth: size, width: size, corner_radius: size / 4 }
            } else {
                OpeningShape::Round { x, y, diameter: size }
            };
            let mut opening = Opening::new("hole", shape).framed(framed);
            opening.lid = lid.map(|(lap, layers)| {
                let lid = if lap { Lid::lap(size) } else { Lid::clearance(size / 8) };
                layers.into_iter().fold(lid, Lid::layers)
            });
            opening
        }));
        match leftovers {
            Some((holes, fittings)) => (job.old_holes, job.fittings) = (holes, Some(fittings)),
            // Fittings go to a whole deck, so a patch goes without.
            None => {
                job.patch = lid.map(|(anywhere, layers)| {
                    let at = |x: i64, y: i64| Point::new(Length::inches(x), Length::inches(y));
                    let rot = DamageSpec::new("rot", vec![at(40, 40), at(50, 41), at(45, 47)]);
                    let mut patch = PatchSpec::new(vec![Length::inches(30), Length::inches(61)], vec![rot]);
                    patch.blocking = anywhere.then_some(BlockingPlaces::Anywhere);
                    patch.margin = layers.map(|layers| Length::inch_fraction(i64::from(layers), 64));
                    patch.old_thickness = layers.map(|layers| Length::inches(i64::from(layers)));
                    patch
                });
            }
        }
        job.opening_rules = rules.map(|(from_edge, apart, width)| {
            let mut rules = OpeningRulesSpec::new();
            (rules.from_edge, rules.frame_width) = (from_edge, width);
            rules.apart = apart.map(|apart| f64::from(apart) / 8.0);
            rules
        });
        job.keep_clear.extend(zone.map(|(from, to)| KeepClear::new("gate", from, to)));
        job
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn what_is_written_is_read_again(job in job()) {
        let again = Job::from_json(&job.to_json()).map_err(|error| TestCaseError::fail(error.to_string()))?;
        prop_assert_eq!(&again, &job);
        prop_assert!(again.rounded().is_empty());
        // Inside another document, whatever the form of its lengths.
        let form = JsonForm::Number(Unit::Metre);
        let value = with_json_form(form, || serde_json::to_value(&job)).unwrap();
        let inside: Job = with_json_form(form, || serde_json::from_value(value)).unwrap();
        prop_assert_eq!(&inside, &job);
        prop_assert!(job.check().is_ok());
    }

    #[test]
    fn no_text_makes_the_reader_panic(text in "\\PC{0,80}") {
        let _ = Job::from_json(&text);
    }

    #[test]
    fn a_fault_points_to_something_that_stands_there_or_is_missing_from_something_that_does(
        job in job(), path in any::<proptest::sample::Index>(), stranger in 0..5_usize,
    ) {
        let mut value = serde_json::to_value(&job).unwrap();
        let names: Vec<String> = value.as_object().unwrap().keys().cloned().collect();
        let strangers = [serde_json::json!(null), serde_json::json!(-7), serde_json::json!("x"), serde_json::json!([[]]), serde_json::json!({"x": 1})];
        value[path.get(&names).as_str()] = strangers[stranger].clone();
        if let Err(error) = Job::from_value(&value) {
            for fault in error.faults() {
                let parent = fault.pointer.rsplit_once('/').map_or("", |(parent, _)| parent);
                prop_assert!(value.pointer(parent).is_some() || value.pointer(&fault.pointer).is_some(), "{}", fault);
            }
        }
    }
}
