use super::*;
use crate::length::{Length, Unit};
use crate::money::Figure;
use crate::outline::{Deck, Outline, Parametric};

fn inches(text: &str) -> Length {
    Length::read(text, Unit::Inch).unwrap().length
}

fn outline(length: &str, beam: &str) -> Outline {
    Deck::Parametric(Parametric::new(inches(length), inches(beam))).outline().unwrap()
}

fn glue() -> Adhesive {
    Adhesive {
        kind: "outdoor carpet".into(),
        trowel: Some("1/8 in V notch".into()),
        coverage: (Figure::of(110), Figure::of(150)),
        can: Figure::of(1),
        wait: Figure::of(15),
        set: Figure::of(30),
        spread: None,
        source: "the can".into(),
    }
}

fn input<'a>(outline: &'a Outline, rolls: &'a [Roll]) -> CoveringInput<'a> {
    CoveringInput {
        boat: "Plover",
        outline,
        openings: &[],
        ply_seams: &[],
        ply_joints: &[],
        rolls,
        run: RunChoice::Best,
        wrap: inches("2"),
        least_piece: inches("12"),
        off_ply_seams: inches("6"),
        traffic: &[],
        others: &[],
        adhesive: None,
    }
}

#[test]
fn a_wide_roll_needs_no_seam_and_a_narrow_one_gets_one_off_the_walkway() {
    let outline = outline("288", "96");
    let rolls = [Roll::new("6 ft", inches("72"), inches("1200")), Roll::new("8 ft 6", inches("102"), inches("1200"))];
    let found = covering(&input(&outline, &rolls)).laid.unwrap();
    assert_eq!(
        (found.roll.as_str(), found.run, found.seams.len(), found.drop),
        ("8 ft 6", Run::ForeAndAft, 0, inches("292"))
    );
    let walk = [Traffic::new("walkway", (inches("0"), inches("36")), inches("288"), inches("24"))];
    let narrow = CoveringInput { traffic: &walk, run: RunChoice::ForeAndAft, ..input(&outline, &rolls[..1]) };
    let found = covering(&narrow).laid.unwrap();
    // The first piece could reach 70 in; nothing is in the way there.
    assert_eq!(found.seams[0].at, inches("70"));
    let wide = [Traffic::new("walkway", (inches("0"), inches("36")), inches("288"), inches("40"))];
    let found = covering(&CoveringInput { traffic: &wide, ..narrow }).laid.unwrap();
    assert_eq!((found.seams[0].at, found.pieces[1].width), (inches("36"), inches("62")));
    assert_eq!((found.length, found.pieces.len()), (inches("584"), 2));
}

#[test]
fn seams_along_the_boat_keep_off_joints_of_boards_along_it() {
    let outline = outline("288", "96");
    let rolls = [Roll::new("6 ft", inches("72"), inches("1200"))];
    let joints = [inches("68")];
    let asked = CoveringInput { ply_joints: &joints, run: RunChoice::ForeAndAft, ..input(&outline, &rolls) };
    let found = covering(&asked).laid.unwrap();
    // 70 could be reached; 68 less 6 is the first that is far enough.
    assert_eq!((found.seams[0].at, found.seams[0].from_ply_seam), (inches("62"), Some(inches("6"))));
}

#[test]
fn athwart_seams_keep_off_those_of_the_boards() {
    let outline = outline("288", "96");
    let rolls = [Roll::new("8 ft 6", inches("102"), inches("1200"))];
    let ply: Vec<Length> = [48, 96, 144, 192, 240].map(Length::inches).to_vec();
    let asked = CoveringInput { ply_seams: &ply, run: RunChoice::Athwart, ..input(&outline, &rolls) };
    let found = covering(&asked).laid.unwrap();
    // Three pieces would do for 292 in from a roll of 102, with seams at 100 at most and at 188 at least; but 100 is 4 in
    // from a board's seam, and from 90 the roll ends at 192, which is one. So four: 90, 186, and 12 in from the end.
    let at: Vec<Length> = found.seams.iter().map(|seam| seam.at).collect();
    assert_eq!(at, [inches("90"), inches("186"), inches("278")]);
    assert!(found.seams.iter().all(|seam| seam.from_ply_seam.unwrap() >= inches("6")));
    assert!(found.pieces.iter().all(|piece| piece.width <= inches("102") && piece.width >= inches("12")));
}

#[test]
fn a_deck_that_no_roll_covers_is_told_why() {
    let outline = outline("288", "96");
    let rolls = [Roll::new("short", inches("102"), inches("200"))];
    let walk = [Traffic::new("all", (inches("0"), inches("0")), inches("288"), inches("96"))];
    let found = covering(&CoveringInput { traffic: &walk, ..input(&outline, &rolls) });
    assert!(found.laid.is_none());
    let reason = found.reason.unwrap();
    assert!(reason.contains("longer than the roll") && reason.contains("athwart: no seams"), "{reason}");
}

#[test]
fn drops_of_several_boats_come_off_as_few_rolls_as_can_be() {
    let drop = |boat: &str, feet: i64| RollPiece::new(boat, "drop", Length::of(feet, Unit::Foot));
    let roll = Length::of(100, Unit::Foot);
    // 50 + 30 + 20 and 60 + 40 fill two rolls.
    let even = cut_list(vec![drop("a", 50), drop("b", 60), drop("c", 30), drop("d", 20), drop("e", 40)], roll);
    assert_eq!((even.rolls.len(), even.bound, even.proven), (2, 2, true));
    assert!(even.rolls.iter().all(|roll| roll.left.is_zero()));
    // First fit by falling length takes three: 44 + 36, 36 + 28 + 28, 28. Two are enough: 44 + 28 + 28, 36 + 36 + 28.
    let hard = cut_list(vec![44, 36, 36, 28, 28, 28].into_iter().map(|feet| drop("x", feet)).collect(), roll);
    assert_eq!((hard.rolls.len(), hard.proven), (2, true));
    for list in [&even, &hard] {
        for roll in &list.rolls {
            assert!(roll.drops.windows(2).all(|pair| pair[0].to == pair[1].from));
        }
    }
    let long = cut_list(vec![drop("a", 101)], roll);
    assert_eq!((long.rolls.len(), long.too_long.len()), (0, 1));
}

#[test]
fn glue_is_rounded_up_once_and_timed_by_halves() {
    let outline = outline("288", "96");
    let rolls = [Roll::new("8 ft 6", inches("102"), inches("1200"))];
    let mut adhesive = glue();
    let found = covering(&CoveringInput { adhesive: Some(&adhesive), ..input(&outline, &rolls) }).glue.unwrap();
    // 192 ft² and 2 in around 64 ft, 10.67 ft²: 202.67. Over 150 and over 110.
    assert_eq!(
        (found.gallons_least, found.gallons_most, found.cans),
        (Figure::scaled(135, 2), Figure::scaled(184, 2), 2)
    );
    // Half of it in 15 minutes: 6.8 ft² a minute.
    assert_eq!(
        (found.timing.window, found.timing.needed, found.timing.stretches),
        (Figure::of(15), Figure::scaled(68, 1), 2)
    );
    adhesive.spread = Some(Figure::of(5));
    let slow = covering(&CoveringInput { adhesive: Some(&adhesive), ..input(&outline, &rolls) }).glue.unwrap().timing;
    // 75 ft² at a time: three stretches.
    assert_eq!((slow.area_in_window, slow.stretches), (Some(Figure::of(75)), 3));
}

#[test]
fn the_cheaper_of_two_rolls_without_seams_is_taken_as_it_is_sold() {
    let outline = outline("288", "96");
    let roll = |label: &str, sold: &str, price: &str| {
        let mut roll = Roll::new(label, inches("102"), inches("1200"));
        (roll.sold_by, roll.price) = (Some(inches(sold)), Some(price.parse().unwrap()));
        roll
    };
    let rolls = [roll("by the roll", "1200", "150"), roll("by the foot", "12", "5.50")];
    let found = covering(&input(&outline, &rolls));
    let laid = found.laid.unwrap();
    // 24 ft 4 in are 25 ft at 5.50.
    assert_eq!((laid.roll.as_str(), laid.buy), ("by the foot", 25));
    assert_eq!(found.trials.iter().filter(|trial| trial.taken).count(), 1);
    // 25 ft by 8.5 ft over 192 ft².
    assert_eq!(laid.waste_percent, Figure::scaled(107, 1));
}
