//! The one list of what can be wrong. The C status numbers and the test that provokes each kind are made from it.

/// Declares the kinds once: name, number, and a line for people.
macro_rules! kinds {
    ($($name:ident = $code:literal, $text:literal;)+) => {
        /// What sort of fault it is.
        ///
        /// The number is fixed for good: it is the status that the C functions return. Numbers run in blocks by concern:
        /// 100 lengths and money, 200 the shape of the file, 300 the outline, 400 the frame, 500 openings and zones,
        /// 600 stock and saw, 700 fasteners, 800 nesting and seams, 900 output, 1000 the survey, 1100 strip-out, covering and
        /// quote.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
        #[non_exhaustive]
        pub enum Kind {
            $(#[doc = $text] $name = $code,)+
        }

        impl Kind {
            /// Every kind, by number.
            pub const ALL: &'static [KindInfo] = &[
                $(KindInfo { kind: Kind::$name, code: $code, name: stringify!($name), text: $text },)+
            ];
        }
    };
}

/// A kind with its number, its name and a line that says what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct KindInfo {
    /// The kind.
    pub kind: Kind,
    /// Its number, the status in C.
    pub code: i32,
    /// Its name.
    pub name: &'static str,
    /// What it is, in a line.
    pub text: &'static str,
}

kinds! {
    LengthUnreadable = 101, "A length that cannot be read.";
    LengthUnknownUnit = 102, "A length in a unit that is not known.";
    LengthTwoUnits = 103, "A length with two units that do not belong together.";
    LengthNotFinite = 104, "A length that is NaN or infinite.";
    LengthTooLarge = 105, "A length beyond what a boat or a shop holds.";
    LengthNegative = 106, "A length below zero where none can be.";
    LengthZero = 107, "A length of zero where something must be left.";
    MoneyUnreadable = 121, "An amount of money that cannot be read.";
    MoneyNegative = 122, "An amount of money below zero.";

    NotJson = 201, "Text that is not JSON.";
    UnknownField = 202, "A field that the schema does not have.";
    MissingField = 203, "A measurement that is required and not there.";
    WrongType = 204, "A value of the wrong type.";
    UnknownWord = 205, "A word that is not one of those a field accepts.";
    OutOfRange = 206, "A number outside what a field accepts.";
    Conflict = 207, "Two fields that exclude each other.";
    SchemaNumber = 208, "A schema number that this version does not read.";
    EmptyList = 209, "A list that must hold something.";
    DuplicateName = 210, "A name that is used twice.";

    OutlineCrossesItself = 301, "An outline that crosses or touches itself.";
    OutlineTooFewCorners = 302, "An outline with too few corners to enclose anything.";
    OutlineArcTooSmall = 303, "An arc whose radius cannot reach both of its ends.";
    OutlineCornerTooLarge = 304, "A corner or taper too large for the sides it joins.";
    OutlineNotchOutside = 305, "A notch that does not fit the stern.";
    OutlineDatum = 306, "An outline that does not start at the bow and port reference edges.";
    PatchSeams = 311, "Old seams that are not in order, or not within the deck.";
    PatchDamage = 312, "A damaged place that encloses nothing, or lies off the deck.";

    FrameMemberOutside = 401, "A cross member that lies outside the deck.";
    FrameOutOfOrder = 402, "Cross members that are not in order from the bow.";
    FrameOverlap = 403, "Cross members that overlap.";
    FrameEndsReversed = 404, "A cross member whose port end is not to port of its starboard end.";
    FrameSpacing = 405, "A regular spacing that does not go from the first to the last.";
    FrameSkew = 406, "Readings at a cross member's ends that are not both given, or further off than boards can follow.";

    OpeningOutside = 501, "An opening that does not lie within the deck.";
    OpeningOverlap = 502, "Two openings that overlap.";
    OpeningCornerTooLarge = 503, "An opening's corner radius that is too large for its sides.";
    ZoneOutside = 504, "A keep-clear zone that does not touch the deck.";
    OldHoleOutside = 505, "An old hole that is in no member.";
    OpeningSlot = 506, "A slot that does not open to the edge that it names.";
    LidSize = 507, "A lid of which nothing is left, or that laps too far.";
    FittingSize = 508, "A fitting whose sizes contradict each other.";

    StockPriceMissing = 601, "Prices given for some bought sheets and not for all.";
    StockMeasuredSize = 602, "A measured sheet that cannot be the nominal one.";
    SawTrimTooLarge = 603, "An edge trim or kerf that leaves nothing of a sheet.";

    FastenerSpacing = 701, "A fastener spacing that cannot be laid out.";
    FastenerSize = 702, "A fastener whose sizes contradict each other.";

    NestValueMissing = 801, "Values given for some parts and not for all.";
    NestStages = 802, "A number of cutting stages that no saw has.";
    TooMany = 803, "More of something than can be worked on.";
    NestInside = 805, "Waste inside a part that is not within it, or overlaps other waste.";

    UnknownView = 901, "A drawing view that the plan does not have.";
    CannotWrite = 902, "A file that cannot be written.";
    CannotRead = 903, "A file that cannot be read.";
    UnknownPointer = 904, "A JSON pointer that leads to nothing of that type.";

    SurveyPointLoose = 1001, "A point that the readings do not hold in place.";
    SurveyDatum = 1002, "A survey that does not say from where and which way it counts.";
    SurveyTrace = 1003, "A trace that cannot be placed or fitted.";
    SurveyPointUnknown = 1004, "A name of a point that no reading has.";
    SurveyReading = 1005, "A reading whose points or parts contradict each other.";
    SurveyNotSolved = 1006, "Readings that no places of the points come near to.";
    SurveyWanted = 1007, "Something that is taken from a survey which does not give it.";
    FigureUnreadable = 1101, "A figure that cannot be taken exactly.";
    ThreePointOrder = 1102, "A low, a likely and a high figure that are not in order.";
    PitTooDeep = 1103, "A pit that is as deep as the wall is thick, or deeper.";
}

impl Kind {
    /// The number of the kind.
    pub fn code(self) -> i32 {
        self as i32
    }
}
