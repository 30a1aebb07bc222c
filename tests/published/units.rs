//! Units of length: NIST Special Publication 811 (2008), appendix B.8, exact factors; and the shop's handbook.

use deck_core::{Area, Length, Money, Unit};

/// Appendix B.8: to convert from, to metre, multiply by; those set in bold there, which are exact.
const NIST_SP_811: [(&str, &str, Unit); 2] = [("inch (in)", "0.0254", Unit::Inch), ("foot (ft)", "0.3048", Unit::Foot)];

/// The row of `units.csv` in the handbook: from, to, factor, kind.
const HANDBOOK: &str = "inch,metre,0.0254,exact";

#[test]
fn exact_factors() {
    for (name, factor, unit) in NIST_SP_811 {
        assert_eq!(Length::of(1, unit).decimal(Unit::Metre), factor, "{name}");
        assert_eq!(format!("{factor} m").parse::<Length>().unwrap(), Length::of(1, unit), "{name}");
        assert!(Length::read(&format!("{factor} m"), unit).unwrap().exact);
    }
    let fields: Vec<&str> = HANDBOOK.split(',').collect();
    assert_eq!(Length::inches(1).decimal(Unit::Metre), fields[2]);
    assert_eq!(Length::of(12, Unit::Inch), Length::of(1, Unit::Foot));
    for (unit, metres) in [(Unit::Millimetre, "0.001"), (Unit::Centimetre, "0.01"), (Unit::Metre, "1")] {
        assert_eq!(Length::of(1, unit).decimal(Unit::Metre), metres);
    }
}

/// Trade fractions and millimetres are whole nanometres.
#[test]
fn what_a_tape_shows_is_exact() {
    for count in 1..=64 {
        assert!(Length::read(&format!("{count}/64"), Unit::Inch).unwrap().exact);
        assert_eq!(Length::inch_fraction(count, 64).nanometres(), 396_875 * count);
    }
    assert!(Length::read("0.000001 mm", Unit::Inch).unwrap().exact);
    assert!(!Length::read("0.0000001 mm", Unit::Inch).unwrap().exact);
}

/// NIST SP 811, appendix B.8: square inch 6.4516 E-04 m², square foot 9.290 304 E-02 m², both exact.
#[test]
fn squared_factors() {
    let square = |unit: Unit| Area::of(Length::of(1, unit), Length::of(1, unit)).decimal(Unit::Metre);
    assert_eq!(square(Unit::Inch), "0.00064516");
    assert_eq!(square(Unit::Foot), "0.09290304");
}

/// A ten-thousandth is the least that money is counted in; a sum of prices keeps its cents.
#[test]
fn money_adds_up() {
    let price: Money = "118.35".parse().unwrap();
    assert_eq!((0..7).map(|_| price).fold(Money::ZERO, |sum, price| sum + price), "828.45".parse().unwrap());
}
