//! Open packing instances: sheets of one size, all items to be cut, edge to edge, no kerf, any number of stages.
//!
//! The fewest sheets are proven: for the classes and the furniture orders by Becker in a doctoral thesis, Universidade
//! Federal do Rio Grande do Sul (2022), with and without quarter turns; for gcut1d by the lower bound of its column generation
//! and a solution that meets it. Nothing may undercut them, our bound may not exceed them, and our count may exceed
//! them only as listed.

use deck_core::nest::{Cost, Effort, Grain, Nest, Part, nest};
use deck_core::stock::{Saw, Sheet};
use deck_core::{Area, Length, Unit};

struct Instance {
    name: &'static str,
    sheet: (i64, i64),
    /// The fewest sheets, and how many more quick takes, as items lie and with turns.
    fixed: (u32, u32),
    turning: (u32, u32),
    /// Width, height, demand.
    items: &'static [(i64, i64, u32)],
}

#[rustfmt::skip]
const INSTANCES: &[Instance] = &[
    // Berkey and Wang, Journal of the Operational Research Society 38 (1987).
    Instance { name: "CLASS01_020_01", sheet: (10, 10), fixed: (8, 0), turning: (7, 0), items: &[(5, 9, 1), (4, 2, 1), (10, 6, 1), (5, 7, 1), (6, 3, 1), (10, 7, 1), (1, 5, 1), (3, 5, 1), (6, 9, 1), (2, 4, 1), (6, 7, 1), (7, 2, 1), (8, 3, 3), (4, 10, 1), (4, 5, 1), (10, 3, 1), (7, 8, 1), (8, 7, 1)] },
    // Berkey and Wang, Journal of the Operational Research Society 38 (1987).
    Instance { name: "CLASS01_020_02", sheet: (10, 10), fixed: (5, 0), turning: (5, 0), items: &[(2, 2, 2), (6, 8, 1), (10, 2, 1), (1, 3, 1), (8, 4, 1), (3, 10, 1), (1, 9, 2), (1, 5, 1), (6, 3, 1), (1, 1, 1), (4, 2, 1), (9, 2, 1), (9, 5, 1), (4, 7, 1), (3, 4, 1), (9, 7, 1), (4, 1, 1), (9, 8, 1)] },
    // Berkey and Wang, Journal of the Operational Research Society 38 (1987).
    Instance { name: "CLASS02_020_01", sheet: (30, 30), fixed: (1, 0), turning: (1, 0), items: &[(5, 9, 1), (4, 2, 1), (10, 6, 1), (5, 7, 1), (6, 3, 1), (10, 7, 1), (1, 5, 1), (3, 5, 1), (6, 9, 1), (2, 4, 1), (6, 7, 1), (7, 2, 1), (8, 3, 3), (4, 10, 1), (4, 5, 1), (10, 3, 1), (7, 8, 1), (8, 7, 1)] },
    // Berkey and Wang, Journal of the Operational Research Society 38 (1987).
    Instance { name: "CLASS03_020_01", sheet: (40, 40), fixed: (6, 0), turning: (5, 1), items: &[(18, 30, 1), (13, 5, 1), (33, 19, 1), (17, 22, 1), (18, 9, 1), (34, 24, 1), (1, 16, 1), (9, 15, 1), (19, 31, 1), (4, 11, 1), (19, 23, 1), (24, 4, 1), (27, 9, 1), (13, 33, 1), (13, 15, 1), (34, 9, 1), (27, 10, 1), (22, 28, 1), (26, 11, 1), (25, 25, 1)] },
    // Berkey and Wang, Journal of the Operational Research Society 38 (1987).
    Instance { name: "CLASS05_020_01", sheet: (100, 100), fixed: (8, 0), turning: (7, 0), items: &[(50, 85, 1), (35, 14, 1), (94, 54, 1), (47, 62, 1), (52, 25, 1), (96, 67, 1), (1, 43, 1), (24, 42, 1), (53, 86, 1), (11, 31, 1), (52, 65, 1), (66, 11, 1), (76, 25, 1), (36, 94, 1), (36, 42, 1), (97, 24, 1), (76, 29, 1), (61, 79, 1), (74, 29, 1), (71, 69, 1)] },
    // Martello and Vigo, Management Science 44 (1998).
    Instance { name: "CLASS07_020_01", sheet: (100, 100), fixed: (5, 0), turning: (5, 1), items: &[(56, 75, 1), (98, 27, 1), (74, 24, 1), (99, 34, 1), (80, 1, 1), (84, 43, 1), (88, 6, 1), (89, 6, 1), (98, 38, 1), (78, 21, 1), (75, 49, 1), (31, 93, 1), (90, 37, 1), (21, 73, 1), (71, 4, 1), (93, 35, 1), (89, 48, 1), (90, 12, 1), (13, 79, 1), (10, 42, 1)] },
    // Martello and Vigo, Management Science 44 (1998).
    Instance { name: "CLASS09_020_01", sheet: (100, 100), fixed: (19, 0), turning: (19, 0), items: &[(56, 75, 1), (97, 77, 1), (62, 73, 1), (98, 84, 1), (71, 50, 1), (76, 93, 1), (83, 55, 2), (97, 88, 1), (67, 71, 1), (64, 99, 1), (80, 89, 1), (85, 87, 1), (70, 60, 1), (57, 53, 1), (89, 85, 1), (84, 98, 1), (85, 61, 1), (62, 70, 1), (10, 42, 1)] },
    // Martello and Vigo, Management Science 44 (1998).
    Instance { name: "CLASS10_020_01", sheet: (100, 100), fixed: (6, 0), turning: (6, 0), items: &[(7, 25, 1), (47, 27, 1), (13, 24, 1), (48, 34, 1), (21, 1, 1), (76, 93, 1), (33, 6, 2), (97, 88, 1), (18, 21, 1), (64, 99, 1), (31, 40, 1), (85, 87, 1), (21, 11, 1), (8, 4, 1), (89, 85, 1), (34, 48, 1), (85, 61, 1), (13, 20, 1), (10, 42, 1)] },
    // Macedo, Alves and Valério de Carvalho, Computers and Operations Research 37 (2010).
    Instance { name: "A-1", sheet: (2750, 1220), fixed: (3, 0), turning: (3, 0), items: &[(1680, 420, 6), (463, 386, 18)] },
    // Macedo, Alves and Valério de Carvalho, Computers and Operations Research 37 (2010).
    Instance { name: "A-3", sheet: (2750, 1220), fixed: (8, 0), turning: (8, 0), items: &[(2117, 475, 16), (463, 386, 1)] },
    // Macedo, Alves and Valério de Carvalho, Computers and Operations Research 37 (2010).
    Instance { name: "A-4", sheet: (2750, 1220), fixed: (3, 0), turning: (3, 0), items: &[(76, 386, 8), (2357, 375, 8)] },
    // Macedo, Alves and Valério de Carvalho, Computers and Operations Research 37 (2010).
    Instance { name: "A-10", sheet: (2550, 2100), fixed: (2, 0), turning: (2, 0), items: &[(481, 961, 16), (1938, 81, 12), (466, 80, 16)] },
    // Macedo, Alves and Valério de Carvalho, Computers and Operations Research 37 (2010).
    Instance { name: "A-22", sheet: (2550, 2100), fixed: (3, 0), turning: (3, 0), items: &[(431, 1001, 24)] },
    // Macedo, Alves and Valério de Carvalho, Computers and Operations Research 37 (2010).
    Instance { name: "A-42", sheet: (2750, 1220), fixed: (8, 0), turning: (7, 0), items: &[(1120, 986, 3), (706, 516, 2), (1120, 486, 1), (703, 486, 1), (2357, 875, 2), (2117, 875, 1), (2117, 775, 2), (1940, 320, 1)] },
    // Beasley 1985, demands of Cintra, Miyazawa, Wakabayashi and Xavier, European Journal of Operational Research 191 (2008).
    Instance { name: "gcut1d", sheet: (250, 250), fixed: (294, 1), turning: (291, 0), items: &[(167, 184, 90), (114, 118, 75), (167, 152, 71), (83, 140, 13), (70, 86, 39), (143, 166, 79), (120, 160, 63), (66, 148, 93), (87, 141, 61), (69, 165, 85)] },
];

fn units(count: i64) -> Length {
    Length::of(count, Unit::Millimetre)
}

fn cut(instance: &Instance, grain: Grain, effort: Effort) -> Nest {
    let part = |(index, &(width, height, count)): (usize, &(i64, i64, u32))| {
        Part::new(index.to_string(), units(width), units(height)).count(count).grain(grain)
    };
    let parts: Vec<Part> = instance.items.iter().enumerate().map(part).collect();
    let stock = [Sheet::new(instance.name, units(instance.sheet.0), units(instance.sheet.1))];
    nest(&parts, &stock, &Saw::new(), effort).unwrap()
}

/// Costs are areas here: whole sheets.
fn sheets(cost: Cost, instance: &Instance) -> u32 {
    let Cost::Area(area) = cost else { panic!("a price") };
    let one = Area::of(units(instance.sheet.0), units(instance.sheet.1));
    assert_eq!(area.square_nanometres() % one.square_nanometres(), 0);
    u32::try_from(area.square_nanometres() / one.square_nanometres()).unwrap()
}

#[test]
fn bound_then_published_then_ours() {
    let mut wrong = Vec::new();
    for instance in INSTANCES {
        for (grain, (fewest, more)) in [(Grain::Length, instance.fixed), (Grain::Any, instance.turning)] {
            let ours = cut(instance, grain, Effort::Quick);
            assert!(ours.unplaced.is_empty(), "{}", instance.name);
            let bound = sheets(ours.bound, instance);
            assert!(bound <= fewest && fewest <= ours.sheet_count, "{}: {bound}, {fewest}", instance.name);
            assert_eq!(sheets(ours.cost, instance), ours.sheet_count);
            if ours.sheet_count != fewest + more {
                wrong.push(format!(
                    "{} {grain:?}: {} for {fewest}, listed {more} more",
                    instance.name, ours.sheet_count
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn more_effort_takes_no_more_sheets() {
    const STEPS: Effort = Effort::Steps(300_000);
    for instance in INSTANCES {
        let (quick, longer) = (cut(instance, Grain::Any, Effort::Quick), cut(instance, Grain::Any, STEPS));
        assert!(longer.sheet_count <= quick.sheet_count, "{}", instance.name);
        assert!(longer.sheet_count >= instance.turning.0, "{}", instance.name);
    }
}
