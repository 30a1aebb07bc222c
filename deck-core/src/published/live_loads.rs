//! Live loads and weights of persons that rules name, for a user to choose from.
//!
//! None of them is a rule for the deck of a private pontoon boat; see [`NO_DECK_RULE`].

use super::Standing;

/// What is to be said wherever a live load is printed.
pub const NO_DECK_RULE: &str = "No source was found that sets a live load for the deck of a private pontoon boat. The load is the user's choice; no rule was applied.";

/// What a preset weighs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PresetLoad {
    /// Spread evenly, pounds to the square foot.
    Uniform(f64),
    /// One person, pounds.
    Person(f64),
}

/// A load that some rule names.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct LivePreset {
    /// The word by which it is chosen.
    pub key: &'static str,
    /// What it is in that rule.
    pub name: &'static str,
    /// The load.
    pub load: PresetLoad,
    /// The rule, with its year.
    pub source: &'static str,
    /// How sure the figure is.
    pub standing: Standing,
}

const POUND_KILOGRAMS: f64 = 0.453_592_37;

const fn uniform(key: &'static str, name: &'static str, psf: f64, source: &'static str) -> LivePreset {
    LivePreset { key, name, load: PresetLoad::Uniform(psf), source, standing: Standing::Memory }
}

const fn person(
    key: &'static str,
    name: &'static str,
    pounds: f64,
    source: &'static str,
    standing: Standing,
) -> LivePreset {
    LivePreset { key, name, load: PresetLoad::Person(pounds), source, standing }
}

/// Every preset. Floors and assembly are rules for buildings; 5 kN/m² is a rule for small craft.
pub const LIVE_PRESETS: &[LivePreset] = &[
    uniform(
        "floor",
        "decks and balconies of dwellings",
        40.0,
        "International Residential Code 2018, table R301.5, from memory",
    ),
    uniform(
        "assembly",
        "assembly, movable seats",
        100.0,
        "International Building Code 2018, table 1607.1, from memory",
    ),
    uniform(
        "weather-deck",
        "least design pressure of a weather deck that people walk on, 5 kN/m²",
        5_000.0 / super::PASCALS_PER_PSF,
        "ISO 12215-5:2008, from memory",
    ),
    person("person-us", "assumed mean weight of a person", 185.0, "46 CFR 170.090, from memory", Standing::Memory),
    person(
        "person-ca",
        "mass of a person, 75 kg",
        75.0 / POUND_KILOGRAMS,
        "Transport Canada TP 1332, clause 4.5.3, quoted; edition not recorded",
        Standing::Verified,
    ),
    person(
        "person-33cfr",
        "divisor of the persons capacity; monohulls only",
        141.0,
        "33 CFR 183.41(b), edition not recorded",
        Standing::Verified,
    ),
];

/// The preset of that key.
///
/// # Examples
/// ```
/// use deck_core::published::{PresetLoad, live_preset};
/// assert_eq!(live_preset("assembly").unwrap().load, PresetLoad::Uniform(100.0));
/// ```
pub fn live_preset(key: &str) -> Option<&'static LivePreset> {
    LIVE_PRESETS.iter().find(|preset| preset.key == key)
}
