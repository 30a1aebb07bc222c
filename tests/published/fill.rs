//! Open instances of one sheet, edge to edge, no kerf, any number of stages: the most value that can be cut.
//!
//! With limited copies the values are those of Furini, Malaguti and Thomopulos, INFORMS Journal on Computing 28 (2016), and of Wang,
//! Baldacci, Liu and Wei, European Journal of Operational Research 327 (2025); those with turns were computed for this
//! project by an integer programme. Without a limit on copies they are those of Cintra, Miyazawa, Wakabayashi and Xavier,
//! European Journal of Operational Research 191 (2008), of Hifi and Zissimopoulos (1996), or of a dynamic programme of
//! this project that is not the library's.

#![allow(clippy::unreadable_literal, reason = "values stand as they are printed")]

use deck_core::nest::{Effort, Fill, FillPart, Grain, Worth};
use deck_core::stock::{Saw, Sheet};
use deck_core::{Length, Money, Unit, fill};

struct Instance {
    name: &'static str,
    sheet: (i64, i64),
    /// The most value with limited copies, as items lie and with turns, where it is known.
    limited: [Option<i64>; 2],
    /// The same with copies without limit.
    unlimited: [Option<i64>; 2],
    /// Width, height, value, copies at most.
    items: &'static [(i64, i64, i64, u32)],
}

#[rustfmt::skip]
const INSTANCES: &[Instance] = &[
    // Beasley, Journal of the Operational Research Society 36 (1985), gcut.
    Instance { name: "gcut1", sheet: (250, 250), limited: [Some(48_368), Some(58_136)], unlimited: [Some(56_460), Some(58_136)], items: &[(167, 184, 30_728, 1), (114, 118, 13_452, 1), (167, 152, 25_384, 1), (83, 140, 11_620, 1), (70, 86, 6020, 1), (143, 166, 23_738, 1), (120, 160, 19_200, 1), (66, 148, 9768, 1), (87, 141, 12_267, 1), (69, 165, 11_385, 1)] },
    // Beasley, Journal of the Operational Research Society 36 (1985), gcut.
    Instance { name: "gcut3", sheet: (250, 250), limited: [Some(60_241), None], unlimited: [Some(61_036), Some(61_626)], items: &[(66, 80, 5280, 1), (164, 107, 17_548, 1), (64, 184, 11_776, 1), (121, 86, 10_406, 1), (163, 135, 22_005, 1), (85, 98, 8330, 1), (81, 102, 8262, 1), (103, 186, 19_158, 1), (152, 106, 16_112, 1), (176, 139, 24_464, 1), (111, 118, 13_098, 1), (69, 169, 11_661, 1), (146, 133, 19_418, 1), (112, 112, 12_544, 1), (133, 160, 21_280, 1), (63, 129, 8127, 1), (163, 152, 24_776, 1), (110, 155, 17_050, 1), (96, 136, 13_056, 1), (92, 142, 13_064, 1), (84, 143, 12_012, 1), (119, 133, 15_827, 1), (71, 71, 5041, 1), (146, 84, 12_264, 1), (93, 86, 7998, 1), (89, 86, 7654, 1), (101, 146, 14_746, 1), (172, 73, 12_556, 1), (73, 169, 12_337, 1), (99, 99, 9801, 1)] },
    // Beasley, Journal of the Operational Research Society 36 (1985), gcut.
    Instance { name: "gcut9", sheet: (1000, 1000), limited: [Some(919_476), Some(933_169)], unlimited: [Some(971_100), Some(971_100)], items: &[(310, 426, 132_060, 1), (673, 468, 314_964, 1), (426, 463, 197_238, 1), (325, 498, 161_850, 1), (555, 540, 299_700, 1), (292, 455, 132_860, 1), (343, 341, 116_963, 1), (362, 491, 177_742, 1), (305, 688, 209_840, 1), (459, 607, 278_613, 1)] },
    // Christofides and Whitlock, Operations Research 25 (1977).
    Instance { name: "cgcut2", sheet: (40, 70), limited: [Some(2892), None], unlimited: [Some(3076), Some(3147)], items: &[(21, 22, 582, 1), (31, 13, 403, 1), (9, 35, 315, 3), (9, 24, 216, 3), (30, 7, 210, 2), (11, 13, 143, 3), (10, 14, 140, 1), (14, 8, 110, 3), (12, 8, 94, 3), (13, 7, 90, 3)] },
    // Christofides and Whitlock, Operations Research 25 (1977).
    Instance { name: "cgcut3", sheet: (40, 70), limited: [Some(1860), None], unlimited: [Some(2240), Some(2280)], items: &[(31, 43, 500, 4), (30, 41, 480, 2), (29, 39, 460, 4), (28, 38, 440, 4), (27, 37, 420, 3), (26, 36, 410, 4), (25, 35, 400, 3), (24, 34, 380, 4), (33, 23, 360, 4), (22, 32, 340, 3), (31, 21, 320, 3), (29, 18, 300, 3), (17, 27, 280, 2), (15, 24, 240, 3), (16, 25, 260, 4), (23, 14, 220, 4), (21, 12, 180, 3), (19, 11, 160, 4), (9, 17, 140, 1)] },
    // Wang, Operations Research 31 (1983).
    Instance { name: "wang20", sheet: (70, 40), limited: [Some(2721), Some(2771)], unlimited: [Some(2743), Some(2775)], items: &[(11, 19, 209, 4), (12, 21, 252, 3), (14, 23, 322, 4), (17, 9, 153, 1), (18, 29, 522, 3), (21, 31, 651, 3), (23, 33, 759, 3), (24, 15, 360, 1), (24, 15, 360, 2), (25, 16, 400, 4), (27, 17, 459, 2), (32, 22, 704, 2), (34, 24, 816, 2), (35, 25, 875, 2), (36, 26, 936, 1), (37, 27, 999, 1), (38, 28, 1064, 1), (39, 29, 1131, 1), (41, 30, 1230, 1), (43, 31, 1333, 1)] },
    // Oliveira and Ferreira, European Journal of Operational Research 44 (1990).
    Instance { name: "OF2", sheet: (70, 40), limited: [Some(2690), None], unlimited: [Some(2776), Some(2800)], items: &[(22, 18, 396, 2), (40, 10, 400, 1), (13, 27, 351, 3), (23, 18, 414, 2), (29, 8, 232, 4), (16, 4, 64, 1), (47, 9, 423, 1), (19, 19, 361, 4), (13, 16, 208, 2), (36, 16, 576, 4)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut2", sheet: (10, 10), limited: [Some(230), Some(250)], unlimited: [Some(280), Some(280)], items: &[(1, 10, 28, 3), (5, 3, 40, 2), (9, 3, 63, 3), (6, 1, 13, 3), (3, 8, 31, 3), (4, 1, 10, 1), (7, 3, 44, 2)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut3", sheet: (10, 10), limited: [Some(247), Some(259)], unlimited: [Some(268), Some(282)], items: &[(3, 2, 7, 2), (7, 2, 20, 3), (4, 5, 60, 2), (4, 1, 9, 2), (1, 10, 14, 1), (8, 4, 79, 1), (4, 2, 11, 2), (3, 7, 52, 3), (6, 2, 13, 3), (9, 1, 21, 2)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut4", sheet: (15, 10), limited: [Some(268), Some(268)], unlimited: [Some(318), Some(416)], items: &[(15, 2, 34, 2), (7, 3, 27, 1), (9, 1, 14, 1), (8, 3, 71, 1), (12, 2, 61, 2)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut5", sheet: (15, 10), limited: [Some(358), Some(370)], unlimited: [Some(396), Some(408)], items: &[(10, 3, 34, 2), (9, 3, 48, 1), (12, 2, 72, 3), (11, 3, 91, 1), (12, 3, 37, 3), (11, 1, 15, 3), (2, 10, 36, 1)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut7", sheet: (20, 20), limited: [Some(430), Some(430)], unlimited: [Some(1144), Some(1144)], items: &[(1, 9, 26, 3), (16, 3, 113, 1), (18, 3, 127, 1), (20, 2, 104, 1), (3, 1, 4, 2)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut8", sheet: (20, 20), limited: [Some(834), None], unlimited: [Some(1039), Some(1119)], items: &[(15, 3, 110, 1), (6, 6, 93, 3), (13, 1, 38, 2), (8, 7, 144, 2), (18, 5, 185, 3), (12, 4, 78, 1), (8, 3, 25, 1)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut11", sheet: (30, 30), limited: [Some(1688), None], unlimited: [Some(2113), Some(2194)], items: &[(3, 23, 118, 3), (29, 5, 244, 1), (21, 2, 81, 3), (17, 11, 371, 3), (14, 7, 254, 2), (8, 5, 78, 2), (21, 8, 293, 1)] },
    // Beasley, Operations Research 33 (1985), ngcut.
    Instance { name: "ngcut12", sheet: (30, 30), limited: [Some(1865), None], unlimited: [Some(2039), Some(2136)], items: &[(16, 6, 132, 1), (24, 1, 29, 3), (6, 28, 351, 3), (8, 23, 275, 3), (5, 1, 10, 3), (6, 26, 259, 2), (2, 30, 110, 2), (9, 11, 240, 3), (4, 30, 265, 1), (16, 13, 507, 1)] },
    // Hifi, Computers and Operations Research 24 (1997); Cung, Hifi and Le Cun, International Transactions in Operational Research 7 (2000).
    Instance { name: "A1", sheet: (50, 60), limited: [Some(2020), None], unlimited: [Some(2220), Some(2480)], items: &[(31, 43, 500, 4), (30, 41, 480, 2), (29, 39, 460, 4), (28, 38, 440, 4), (27, 37, 420, 3), (26, 36, 410, 4), (25, 35, 400, 3), (24, 34, 380, 4), (33, 23, 360, 4), (22, 32, 340, 3), (31, 21, 320, 3), (29, 18, 300, 3), (17, 27, 280, 2), (15, 24, 240, 3), (16, 25, 260, 4), (23, 14, 220, 4), (21, 12, 180, 3), (19, 11, 160, 4), (9, 17, 140, 1)] },
    // Hifi, Computers and Operations Research 24 (1997); Cung, Hifi and Le Cun, International Transactions in Operational Research 7 (2000).
    Instance { name: "A5", sheet: (132, 100), limited: [Some(12_985), None], unlimited: [Some(13_174), Some(13_200)], items: &[(18, 39, 702, 4), (13, 49, 637, 2), (27, 51, 1377, 1), (65, 31, 2015, 3), (45, 27, 1215, 2), (69, 21, 1449, 4), (21, 63, 1323, 2), (54, 41, 2214, 2), (41, 31, 1271, 1), (37, 22, 814, 1), (29, 54, 1566, 1), (47, 31, 1457, 2), (18, 31, 558, 3), (21, 17, 357, 1), (19, 53, 1007, 1), (13, 41, 533, 4), (37, 12, 444, 5), (19, 29, 551, 2), (67, 17, 1139, 1), (49, 31, 1519, 3)] },
    // Hifi, Computers and Operations Research 24 (1997); Cung, Hifi and Le Cun, International Transactions in Operational Research 7 (2000).
    Instance { name: "STS4", sheet: (99, 99), limited: [Some(9700), None], unlimited: [Some(10_030), Some(10_030)], items: &[(14, 16, 228, 1), (14, 31, 406, 2), (15, 17, 235, 3), (17, 19, 303, 3), (18, 19, 333, 2), (20, 34, 650, 2), (20, 39, 775, 3), (21, 29, 648, 2), (25, 25, 610, 2), (27, 27, 729, 3), (29, 34, 937, 2), (30, 25, 750, 2), (30, 27, 799, 3), (33, 30, 968, 2), (35, 30, 1052, 2), (37, 27, 999, 4), (38, 49, 1877, 2), (40, 25, 1025, 2), (43, 28, 1204, 4), (44, 34, 1499, 4)] },
    // Hifi, Computers and Operations Research 24 (1997); Cung, Hifi and Le Cun, International Transactions in Operational Research 7 (2000).
    Instance { name: "CHL2", sheet: (62, 55), limited: [Some(2326), None], unlimited: [Some(2432), Some(2541)], items: &[(11, 15, 108, 2), (27, 9, 148, 3), (19, 21, 291, 1), (28, 31, 512, 1), (13, 17, 159, 2), (15, 29, 348, 3), (29, 13, 256, 2), (31, 12, 260, 2), (31, 19, 353, 2), (23, 16, 206, 1)] },
    // Hifi, Computers and Operations Research 24 (1997); Cung, Hifi and Le Cun, International Transactions in Operational Research 7 (2000).
    Instance { name: "CHL5", sheet: (20, 20), limited: [Some(390), Some(400)], unlimited: [Some(400), Some(400)], items: &[(14, 2, 28, 1), (1, 5, 5, 1), (20, 4, 80, 2), (12, 3, 36, 3), (11, 8, 88, 2), (11, 6, 66, 2), (7, 9, 63, 1), (17, 5, 85, 1), (7, 14, 98, 2), (1, 7, 7, 3)] },
    // Hifi and Zissimopoulos, European Journal of Operational Research 91 (1996), and Herz 1972.
    Instance { name: "HZ1", sheet: (78, 67), limited: [None, None], unlimited: [Some(5226), Some(5226)], items: &[(7, 10, 70, 0), (32, 54, 1728, 0), (6, 13, 78, 0), (14, 54, 756, 0), (9, 5, 45, 0), (24, 13, 312, 0)] },
    // Hifi and Zissimopoulos, European Journal of Operational Research 91 (1996), and Herz 1972.
    Instance { name: "HZ2", sheet: (99, 80), limited: [None, None], unlimited: [Some(8046), Some(8523)], items: &[(21, 13, 285, 0), (54, 20, 1083, 0), (24, 23, 556, 0), (18, 35, 273, 0), (36, 17, 729, 0)] },
    // Fayard, Hifi and Zissimopoulos, Journal of the Operational Research Society 49 (1998).
    Instance { name: "CU1", sheet: (100, 125), limited: [Some(12_330), None], unlimited: [Some(12_330), Some(12_500)], items: &[(23, 44, 1012, 6), (20, 56, 1120, 9), (24, 41, 984, 6), (38, 57, 2166, 3), (23, 57, 1311, 4), (58, 49, 2842, 1), (51, 79, 4029, 1), (43, 35, 1505, 3), (39, 68, 2652, 2), (21, 65, 1365, 2), (24, 80, 1920, 3), (50, 61, 3050, 3), (45, 59, 2655, 2), (42, 69, 2898, 1), (54, 68, 3672, 1), (29, 75, 2175, 3), (24, 39, 936, 7), (22, 42, 924, 2), (56, 53, 2968, 1), (24, 49, 1176, 1), (20, 66, 1320, 5), (45, 53, 2385, 4), (23, 50, 1150, 8), (34, 75, 2550, 1), (38, 28, 1064, 3)] },
    // Fayard, Hifi and Zissimopoulos, Journal of the Operational Research Society 49 (1998).
    Instance { name: "CW1", sheet: (125, 105), limited: [Some(6402), None], unlimited: [Some(6744), Some(7088)], items: &[(42, 41, 283, 3), (28, 65, 256, 1), (28, 63, 221, 2), (31, 38, 704, 3), (69, 24, 648, 2), (35, 35, 298, 6), (47, 55, 442, 2), (78, 22, 640, 1), (33, 30, 534, 8), (77, 47, 406, 1), (35, 41, 469, 4), (55, 34, 186, 2), (72, 66, 291, 1), (37, 64, 665, 3), (48, 26, 399, 6), (51, 21, 456, 1), (58, 40, 201, 2), (44, 22, 424, 6), (41, 61, 414, 2), (59, 36, 629, 2), (25, 30, 362, 4), (47, 23, 376, 1), (56, 65, 414, 2), (29, 64, 693, 1), (78, 58, 456, 1)] },
];

fn units(count: i64) -> Length {
    Length::of(count, Unit::Millimetre)
}

fn cut(instance: &Instance, grain: Grain, limited: bool) -> Fill {
    let part = |(index, &(width, height, value, copies)): (usize, &(i64, i64, i64, u32))| {
        let value = Money::from_ten_thousandths(i128::from(value) * 10_000);
        let part = FillPart::new(index.to_string(), units(width), units(height)).grain(grain).value(value);
        if limited { part.count(copies) } else { part.unlimited() }
    };
    let parts: Vec<FillPart> = instance.items.iter().enumerate().map(part).collect();
    let sheet = Sheet::new(instance.name, units(instance.sheet.0), units(instance.sheet.1));
    fill(&sheet, &parts, &Saw::new(), Effort::Standard).unwrap()
}

/// The value in whole units; instances have no other.
fn value(worth: Worth) -> i64 {
    let Worth::Value(value) = worth else { panic!("an area") };
    assert_eq!(value.ten_thousandths() % 10_000, 0);
    i64::try_from(value.ten_thousandths() / 10_000).unwrap()
}

#[test]
fn published_values_are_reached_and_proven() {
    let mut compared = 0;
    for instance in INSTANCES {
        for (known, limited) in [(instance.limited, true), (instance.unlimited, false)] {
            for (known, grain) in known.into_iter().zip([Grain::Length, Grain::Any]) {
                let Some(known) = known else { continue };
                let ours = cut(instance, grain, limited);
                assert_eq!((value(ours.value), ours.proven), (known, true), "{} {grain:?} {limited}", instance.name);
                compared += 1;
            }
        }
    }
    assert!(compared > 60, "{compared}");
}
