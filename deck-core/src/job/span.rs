//! What a job says of strength: the panel's rating, the service, the loads that its user chose.
//!
//! Everything may be left out. Without a panel there is no figure; without a load there are limits and no utilisation.

use super::specs::settings;
use crate::length::Length;
use crate::published::{Capacity, FaceGrade, NEWTONS_PER_POUND, SpeciesGroup};
use crate::span::{Layup, Ply, Stresses, StructuralPanel};

settings! {
    /// What the boards, as laid, are to be held against.
    SpanSpec {
        /// What the boards are known by. Left out: there is no figure of strength.
        panel: PanelSpec,
        /// Whether the boards are wet in service, at 16 percent of moisture or more. Left out: they are.
        wet: bool,
        /// Load duration factor: 0.9 permanent, 1 normal, 1.15 two months, 1.25 seven days, 1.6 wind. Left out: 1.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1.6)))]
        duration: f64,
        /// Largest sag as a part of the bay: 360 stands for l/360. Left out: 360.
        #[cfg_attr(feature = "schema", schemars(range(min = 1.0, max = 10000.0)))]
        deflection: f64,
        /// The load spread over the deck that the user chose. Left out: limits only.
        load: LoadSpec,
        /// Loads that stand on a small place. Left out: limits for a heel, a pedestal and a jack.
        points: Vec<PointSpec>,
        /// What is known of screws and flanges. Left out: no figure of what fasteners hold.
        fasteners: HoldSpec,
    }
}

settings! {
    /// What the boards are known by: a published row (`series` and `rating`), the user's own capacities about either axis
    /// (`across`, `along`), or plies from face to back (`plies` and `stresses`).
    PanelSpec {
        /// The kind of panel, in the words of the published tables.
        series: String,
        /// The span rating, or the thickness of sanded plywood.
        rating: String,
        /// Species group, of sanded plywood.
        group: SpeciesGroup,
        /// Grade, of sanded plywood.
        grade: FaceGrade,
        /// The user's own capacities with the strength axis across the supports; dry, at normal load duration.
        across: Capacity,
        /// The user's own capacities with the strength axis along the supports; dry, at normal load duration.
        along: Capacity,
        /// The plies, from face to back.
        #[cfg_attr(feature = "schema", schemars(length(min = 1)))]
        plies: Vec<Ply>,
        /// Stiffness and stresses of the reference ply.
        stresses: Stresses,
        /// Stiffness of a ply across its grain over that along it. Left out: 1/35, from memory.
        #[cfg_attr(feature = "schema", schemars(range(min = 0.001, max = 1.0)))]
        cross_stiffness: f64,
    }
}

settings! {
    /// A load spread evenly: pounds to the square foot, kilopascals, or the name of a published one.
    LoadSpec {
        /// Pounds to the square foot.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 100_000)))]
        psf: f64,
        /// Kilopascals.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 4000)))]
        kpa: f64,
        /// The name of a published load.
        preset: String,
    }
}

settings! {
    /// A load on a small rectangle: of a preset, or with a name and sizes of its own.
    PointSpec {
        /// What it is. Left out with a preset: the preset's name.
        name: String,
        /// `heel`, `pedestal` or `jack`: a name with usual sizes. Common practice, no source.
        preset: PointPreset,
        /// The force that the user chose. Left out: limits only.
        force: ForceSpec,
        /// What it covers athwart.
        length: Length,
        /// What it covers fore and aft.
        width: Length,
        /// Where its middle stands. Left out: the worst place of each board, anywhere and away from free edges.
        at: PointPlace,
    }
}

settings! {
    /// A place on the deck.
    PointPlace {
        /// Distance from the bow, as members are measured; required.
        station: Length,
        /// Distance from the port edge; required.
        from_port: Length,
    }
}

settings! {
    /// A force: pounds or newtons.
    ForceSpec {
        /// Pounds.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 1_000_000)))]
        pounds: f64,
        /// Newtons.
        #[cfg_attr(feature = "schema", schemars(extend("exclusiveMinimum" = 0, "maximum" = 4_000_000)))]
        newtons: f64,
    }
}

settings! {
    /// What is known of screws and flanges beside the job's fastening: for what a screw and a row hold.
    HoldSpec {
        /// Alloy and temper of the flanges; required.
        alloy: String,
        /// Diameter of the screw's head; required.
        head: Length,
        /// Specific gravity of the boards. Left out: 0.42, plywood of an ordinary grade, from memory.
        #[cfg_attr(feature = "schema", schemars(range(min = 0.2, max = 1.2)))]
        gravity: f64,
        /// The lift on each row that the user wants it to hold.
        lift: ForceSpec,
        /// The side load on each row that the user wants it to hold.
        side: ForceSpec,
    }
}

/// A small load with usual sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum PointPreset {
    /// A person's heel.
    Heel,
    /// The base of a seat or table pedestal.
    Pedestal,
    /// The pad of a jack.
    Jack,
}

impl PointPreset {
    /// All of them.
    pub const ALL: [PointPreset; 3] = [PointPreset::Heel, PointPreset::Pedestal, PointPreset::Jack];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            PointPreset::Heel => "heel",
            PointPreset::Pedestal => "pedestal",
            PointPreset::Jack => "jack",
        }
    }

    /// The side of the square that it stands on: 2-1/2 in, 7 in and 4 in. Common practice, no source: measure yours.
    pub fn side(self) -> Length {
        match self {
            PointPreset::Heel => Length::inch_fraction(5, 2),
            PointPreset::Pedestal => Length::inches(7),
            PointPreset::Jack => Length::inches(4),
        }
    }
}

impl ForceSpec {
    /// The force in pounds; none where neither is given.
    pub fn in_pounds(&self) -> Option<f64> {
        self.pounds.or(self.newtons.map(|newtons| newtons / NEWTONS_PER_POUND))
    }
}

impl PointSpec {
    /// Its name, or its preset's.
    pub fn title(&self) -> &str {
        self.name.as_deref().or(self.preset.map(PointPreset::name)).unwrap_or_default()
    }

    /// What it covers athwart, and fore and aft; none where neither it nor a preset says.
    pub fn size(&self) -> Option<(Length, Length)> {
        let side = self.preset.map(PointPreset::side);
        self.length.or(side).zip(self.width.or(side))
    }
}

impl PanelSpec {
    /// What the room of strength knows the panel by; none where no kind is complete.
    pub fn structural(&self) -> Option<StructuralPanel> {
        if let (Some(series), Some(rating)) = (&self.series, &self.rating) {
            let mut panel = StructuralPanel::published(series, rating);
            if let StructuralPanel::Published(published) = &mut panel {
                (published.group, published.grade) = (self.group, self.grade);
            }
            return Some(panel);
        }
        if self.across.is_some() || self.along.is_some() {
            return Some(StructuralPanel::own(self.across, self.along));
        }
        let mut layup = Layup::new(self.plies.clone()?, self.stresses?);
        layup.cross_stiffness = self.cross_stiffness.unwrap_or(layup.cross_stiffness);
        Some(StructuralPanel::Layup(layup))
    }

    /// The panel in words.
    pub fn title(&self) -> String {
        if let (Some(series), Some(rating)) = (&self.series, &self.rating) {
            return format!("{series} {rating}{}", self.grade_title());
        }
        match &self.plies {
            Some(plies) => format!("{} plies, by transformed sections", plies.len()),
            None => "a panel of the user's own figures".into(),
        }
    }

    fn grade_title(&self) -> String {
        let group = self.group.map(|group| format!(", group {group:?}")).unwrap_or_default();
        let grade = self.grade.map(|grade| format!(", grade {grade:?}")).unwrap_or_default();
        format!("{group}{grade}")
    }
}
