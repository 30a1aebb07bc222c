//! The units that a tape or a drawing carries.

/// A unit of length.
///
/// # Method
/// One inch is exactly 25.4 mm and one foot exactly 12 in: NIST Special Publication 811 (2008), appendix B.8
/// (inch to metre 2.54 E-02, foot to metre 3.048 E-01, both exact).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Unit {
    /// Inches.
    #[default]
    #[serde(rename = "in")]
    Inch,
    /// Feet.
    #[serde(rename = "ft")]
    Foot,
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetre,
    /// Centimetres.
    #[serde(rename = "cm")]
    Centimetre,
    /// Metres.
    #[serde(rename = "m")]
    Metre,
}

impl Unit {
    /// Every unit.
    pub const ALL: [Unit; 5] = [Unit::Inch, Unit::Foot, Unit::Millimetre, Unit::Centimetre, Unit::Metre];

    /// Nanometres in one of the unit.
    pub const fn nanometres(self) -> i64 {
        match self {
            Unit::Inch => 25_400_000,
            Unit::Foot => 304_800_000,
            Unit::Millimetre => 1_000_000,
            Unit::Centimetre => 10_000_000,
            Unit::Metre => 1_000_000_000,
        }
    }

    /// The abbreviation: `in`, `ft`, `mm`, `cm`, `m`.
    pub const fn symbol(self) -> &'static str {
        match self {
            Unit::Inch => "in",
            Unit::Foot => "ft",
            Unit::Millimetre => "mm",
            Unit::Centimetre => "cm",
            Unit::Metre => "m",
        }
    }

    /// The unit that a word or a mark stands for, such as `in`, `"`, `inches`, `mm`.
    pub fn from_word(word: &str) -> Option<Unit> {
        Some(match word.to_ascii_lowercase().as_str() {
            "in" | "in." | "inch" | "inches" | "\"" | "\u{2033}" | "\u{201d}" | "''" => Unit::Inch,
            "ft" | "ft." | "foot" | "feet" | "'" | "\u{2032}" | "\u{2019}" => Unit::Foot,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Unit::Millimetre,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Unit::Centimetre,
            "m" | "metre" | "metres" | "meter" | "meters" => Unit::Metre,
            _ => return None,
        })
    }

    /// Decimal places that tell neighbouring nanometres apart in this unit.
    pub(super) const fn places(self) -> u32 {
        match self {
            Unit::Millimetre => 6,
            Unit::Centimetre => 7,
            Unit::Inch | Unit::Metre => 9,
            Unit::Foot => 10,
        }
    }

    /// True for inches and feet, which shops write in fractions.
    pub const fn is_imperial(self) -> bool {
        matches!(self, Unit::Inch | Unit::Foot)
    }
}
