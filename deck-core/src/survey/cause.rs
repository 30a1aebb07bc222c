//! What slip of the eye or the pen an error of a reading looks like.

use crate::length::{Length, Unit};

/// What a reading may have been misread or written by, where one slip alone fits the estimate.
///
/// `off` is the reading less what it should be, in millimetres, and `deviation` how well that is known. Common practice, no
/// source: these are the slips that people name.
pub(super) fn cause(reading: Length, off: f64, deviation: f64, unit: Unit) -> Option<String> {
    let fits = |slip: f64| (off.abs() - slip).abs() <= 3.0 * deviation.max(0.5) && deviation * 4.0 <= slip;
    let named: &[(f64, &str)] = if unit.is_imperial() {
        &[
            (304.8, "one foot"),
            (25.4, "one inch, as where the hook of the tape was held at the 1 in mark"),
            (254.0, "ten inches"),
        ]
    } else {
        &[
            (1000.0, "one metre"),
            (100.0, "100 mm, as where the tape was held at the 100 mm mark"),
            (10.0, "one centimetre"),
            (50.0, "50 mm"),
        ]
    };
    if let Some((_, name)) = named.iter().find(|(slip, _)| fits(*slip)) {
        return Some(format!("It is off by about {name}."));
    }
    swapped(reading, off, deviation, unit)
}

/// Two neighbouring digits of the whole inches or millimetres, the one for the other.
fn swapped(reading: Length, off: f64, deviation: f64, unit: Unit) -> Option<String> {
    let step = if unit.is_imperial() { Unit::Inch } else { Unit::Millimetre };
    let whole = reading.nanometres() / step.nanometres();
    let one = step.nanometres() as f64 / 1e6;
    let digits: Vec<char> = whole.to_string().chars().collect();
    for at in 1..digits.len() {
        let mut other = digits.clone();
        other.swap(at - 1, at);
        let meant: i64 = other.iter().collect::<String>().parse().ok()?;
        let slip = (whole - meant) as f64 * one;
        let is_it = (off - slip).abs() <= 3.0 * deviation.max(0.5) && deviation * 4.0 <= slip.abs();
        if meant != whole && is_it {
            return Some(format!("Two digits may have been swapped: {whole} for {meant}."));
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_known_by_their_size() {
        let inch = 25.4;
        let told = |off: f64, reading: i64| cause(Length::inches(reading), off * inch, 1.0, Unit::Inch);
        assert!(told(12.0, 240).unwrap().contains("one foot"));
        assert!(told(-1.02, 240).unwrap().contains("one inch"));
        assert_eq!(told(27.0, 263).unwrap(), "Two digits may have been swapped: 263 for 236.");
        assert_eq!(told(3.4, 240), None);
        // Known too badly to say.
        assert_eq!(cause(Length::inches(240), inch, 12.0, Unit::Inch), None);
    }
}
