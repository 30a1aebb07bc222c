//! Laws of lengths: what is printed is read back, rounding is to the nearest, sums are exact, rubbish is refused.

use deck_core::length::{JsonForm, with_json_form};
use deck_core::{Length, Notation, Unit};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// Lengths to each law.
const CASES: u32 = 20_000;
const SEED: u64 = 811;
/// The kilometre that is read at most.
const LIMIT: i64 = 1_000_000_000_000;
const INCH: i64 = 25_400_000;

fn config() -> ProptestConfig {
    ProptestConfig {
        cases: CASES,
        rng_seed: RngSeed::Fixed(SEED),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// Any length; often a fraction of an inch, often tenths of a millimetre, small ones more often than large ones.
fn lengths() -> impl Strategy<Value = Length> {
    prop_oneof![
        -LIMIT..=LIMIT,
        -1000 * INCH..1000 * INCH,
        (-30_000..30_000_i64).prop_map(|count| count * INCH / 64),
        (-100_000..100_000_i64).prop_map(|count| count * 100_000),
        prop::sample::select(vec![0, 1, -1, LIMIT, -LIMIT, INCH - 1, INCH + 1]),
    ]
    .prop_map(Length::from_nanometres)
}

fn units() -> impl Strategy<Value = Unit> {
    prop::sample::select(Unit::ALL.to_vec())
}

fn notations() -> impl Strategy<Value = Notation> {
    (units(), prop::sample::select(vec![2_u32, 4, 8, 16, 32, 64]), any::<bool>())
        .prop_map(|(unit, denominator, feet)| Notation::new(unit).denominator(denominator).feet(feet))
}

fn read(text: &str, unit: Unit) -> Length {
    Length::read(text, unit).unwrap_or_else(|error| panic!("{text:?}: {error}")).length
}

/// Figures, marks, blanks and words as they come from keyboards, and anything else.
fn rubbish() -> impl Strategy<Value = String> {
    let scrap = prop::sample::select(vec![
        "7",
        "10",
        "94",
        ".",
        "-",
        "/",
        "'",
        "\"",
        " ",
        "½",
        "⅞",
        "in",
        "ft",
        "mm",
        "m",
        "inches",
        "nan",
        "inf",
        "e5",
        "0",
        "99999999999999999999999999",
        "−",
        "⁄",
        "″",
        "1/2",
        "+",
        "''",
        ",",
        "\u{a0}",
        "'-",
        "\u{1}nm:5",
        "é",
        "",
    ]);
    prop_oneof![prop::collection::vec(scrap, 0..9).prop_map(|scraps| scraps.concat()), any::<String>()]
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn what_is_printed_exactly_is_read_back(length in lengths(), unit in units(), notation in notations()) {
        let text = length.to_string();
        prop_assert_eq!(text.parse::<Length>().unwrap(), length, "{}", text);
        let decimal = length.decimal(unit);
        prop_assert_eq!(read(&decimal, unit), length, "{} {}", decimal, unit.symbol());
        prop_assert_eq!(read(&format!("{decimal} {}", unit.symbol()), Unit::Metre), length);
        prop_assert_eq!(Length::read_number(length.number(unit), unit).unwrap().length, length);
        // In trade fractions where those are exact, otherwise at what they were rounded to.
        let rounded = notation.round(length);
        if rounded.abs() <= Length::LIMIT {
            prop_assert_eq!(read(&notation.figure(length), notation.unit), rounded, "{}", notation.figure(length));
        }
        if rounded == length {
            prop_assert_eq!(notation.text(length), notation.figure(length));
        } else {
            prop_assert!(notation.text(length).starts_with('≈'));
        }
    }

    #[test]
    fn printing_rounds_to_the_nearest(length in lengths(), notation in notations()) {
        let rounded = notation.round(length);
        let (step, parts) = if matches!(notation.unit, Unit::Inch | Unit::Foot) {
            (i128::from(INCH), i128::from(notation.denominator))
        } else {
            (1_000_000, 10)
        };
        let off = i128::from((length - rounded).nanometres()).abs();
        prop_assert!(2 * parts * off <= step, "{} printed as {}", length, notation.figure(length));
        prop_assert_eq!(notation.round(rounded), rounded);
        let fraction = length.fraction(notation.denominator);
        let whole = i128::from(fraction.whole) * i128::from(fraction.denominator) + i128::from(fraction.numerator);
        let value = whole * i128::from(INCH) * if fraction.negative { -1 } else { 1 };
        let off = value - i128::from(length.nanometres()) * i128::from(fraction.denominator);
        prop_assert!(2 * i128::from(notation.denominator) * off.abs() <= i128::from(INCH * fraction.denominator));
        prop_assert_eq!(fraction.exact, off == 0);
    }

    #[test]
    fn sums_are_exact(lengths in prop::collection::vec(lengths(), 0..40), times in -1000..1000_i64) {
        let whole: i64 = lengths.iter().map(|length| length.nanometres()).sum();
        let sum: Length = lengths.iter().copied().sum();
        prop_assert_eq!(sum.nanometres(), whole);
        prop_assert_eq!((sum * times).nanometres(), whole * times);
        prop_assert_eq!(lengths.iter().fold(sum, |rest, length| rest - *length), Length::ZERO);
    }

    #[test]
    fn a_part_is_the_nearest(length in lengths(), above in -1000..1000_i64, below in 1..1000_i64) {
        let product = i128::from(length.nanometres()) * i128::from(above);
        let off = product - i128::from(length.part(above, below).nanometres()) * i128::from(below);
        prop_assert!(2 * off.abs() <= i128::from(below));
    }

    #[test]
    fn json_gives_back_the_same_length(length in lengths(), unit in units()) {
        for form in [JsonForm::Text, JsonForm::Input(unit), JsonForm::Number(unit)] {
            let back = with_json_form(form, || {
                let text = serde_json::to_string(&length).unwrap();
                serde_json::from_str::<Length>(&text).unwrap_or_else(|error| panic!("{text}: {error}"))
            });
            prop_assert_eq!(back, length, "{:?}", form);
        }
    }

    #[test]
    fn rubbish_is_refused_or_read_and_never_more(text in rubbish(), unit in units()) {
        match Length::read(&text, unit) {
            Ok(reading) => prop_assert!(reading.length.abs() <= Length::LIMIT),
            Err(error) => {
                let fault = error.first();
                prop_assert!((100..200).contains(&fault.kind.code()));
                prop_assert!(!fault.message.is_empty() && !fault.accepted.is_empty());
                prop_assert!(fault.message.chars().count() < 400, "{}", fault.message);
            }
        }
        let _ = text.parse::<Length>();
    }

    #[test]
    fn any_number_is_read_or_refused(bits in any::<u64>(), unit in units()) {
        let number = f64::from_bits(bits);
        match Length::read_number(number, unit) {
            Ok(reading) => {
                let off = number * unit.nanometres() as f64 - reading.length.nanometres() as f64;
                prop_assert!(off.abs() <= 0.5 + 1e-4, "{} {}", number, unit.symbol());
            }
            Err(error) => prop_assert!(error.count() == 1),
        }
    }
}
