//! Aluminium alloys: least strengths and physical properties.
//!
//! Least strengths: a screw maker's technical pages (2021), which quote the Aluminum Design Manual 2015; the extrusion
//! and the physical properties: public code. Rows recalled from the Aluminum Design Manual say so.

use super::Standing;

/// Least strengths of an alloy and temper.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Alloy {
    /// Its name: alloy, temper, and the product where that matters.
    pub name: &'static str,
    /// Tensile yield Fty, ksi.
    pub yield_ksi: f64,
    /// Tensile ultimate Ftu, ksi.
    pub ultimate_ksi: f64,
    /// How sure the strengths are.
    pub standing: Standing,
    /// Where they were read.
    pub source: &'static str,
}

const PAGES: &str = "screw maker's technical pages (2021)";

const fn alloy(name: &'static str, yield_ksi: f64, ultimate_ksi: f64) -> Alloy {
    Alloy { name, yield_ksi, ultimate_ksi, standing: Standing::Verified, source: PAGES }
}

/// Every alloy. For 6061-T6 the ultimate strength is 42 ksi in sheet and plate and 38 ksi in extrusions.
pub const ALLOYS: &[Alloy] = &[
    alloy("6063-T5", 16.0, 22.0),
    alloy("6063-T6", 25.0, 30.0),
    alloy("6061-T6", 35.0, 42.0),
    Alloy {
        name: "6061-T6 extrusion",
        yield_ksi: 35.0,
        ultimate_ksi: 38.0,
        standing: Standing::Verified,
        source: "Ftu in public code; Fty as for sheet, screw maker's technical pages (2021)",
    },
    Alloy {
        name: "5052-H32",
        yield_ksi: 23.0,
        ultimate_ksi: 31.0,
        standing: Standing::Memory,
        source: "Aluminum Design Manual, from memory",
    },
];

/// Modulus of elasticity of all of them, ksi. Aluminum Design Manual, from memory.
pub const ALUMINIUM_MODULUS_KSI: f64 = 10_100.0;

/// Density in kg/m³, public code, verified: 6061 and 5052.
pub const ALUMINIUM_DENSITY: [(&str, f64); 2] = [("6061", 2700.0), ("5052", 2680.0)];

/// Thermal expansion for each kelvin, public code, verified: least and greatest figure found for 6061 and 5052.
pub const ALUMINIUM_EXPANSION: [(&str, f64, f64); 2] = [("6061", 23.2e-6, 23.6e-6), ("5052", 23.8e-6, 23.8e-6)];
