//! What a job asks of strength, in the words of the room that answers.

use super::figures::{force, given};
use super::found::PointLoad;
use crate::error::Error;
use crate::job::{Checked, LoadSpec, PointPreset, PointSpec, Service};
use crate::length::{Notation, Unit};
use crate::published::Standing;
use crate::span::{Load, StructuralPanel};

/// The question that each board is put to.
pub(super) struct Asked<'a> {
    pub(super) panel: &'a StructuralPanel,
    pub(super) service: Service,
    pub(super) load: Option<Load>,
    pub(super) points: Vec<PointLoad>,
    pub(super) notation: Notation,
    /// The boards' thickness, inches.
    pub(super) thickness: f64,
}

const OWN_SIZE: &str = "the user's own size";
const USUAL_SIZE: &str = "usual size, common practice, no source: measure yours";

impl<'a> Asked<'a> {
    pub(super) fn new(checked: &Checked, panel: &'a StructuralPanel) -> Result<Asked<'a>, Error> {
        let spec = &checked.span;
        let presets = || PointPreset::ALL.map(|preset| PointSpec::new().preset(preset)).to_vec();
        let unit = checked.settings.notation.unit;
        let points = spec.points.clone().unwrap_or_else(presets);
        Ok(Asked {
            panel,
            service: checked.settings.service,
            load: spec.load.as_ref().and_then(|load| uniform(load).transpose()).transpose()?,
            points: points.iter().filter_map(|spec| point(spec, unit)).collect(),
            notation: checked.settings.notation,
            thickness: checked.thickness.as_inches(),
        })
    }
}

fn uniform(load: &LoadSpec) -> Result<Option<Load>, Error> {
    Ok(match (load.psf, load.kpa, &load.preset) {
        (Some(psf), ..) => Some(Load::user(psf)?),
        (_, Some(kilopascals), _) => {
            let load = Load::kilopascals(kilopascals)?;
            Some(Load { psf: given(load.psf), ..load })
        }
        (.., Some(preset)) => Some(Load::preset(preset)?),
        _ => None,
    })
}

/// The check has seen to it that each has a size.
fn point(spec: &PointSpec, unit: Unit) -> Option<PointLoad> {
    let (length, width) = spec.size()?;
    let usual = spec.preset.is_some() && (spec.length.is_none() || spec.width.is_none());
    let (source, standing) = if usual { (USUAL_SIZE, Standing::CommonPractice) } else { (OWN_SIZE, Standing::Choice) };
    let pounds = spec.force.as_ref().and_then(crate::job::ForceSpec::in_pounds).map(given);
    Some(PointLoad {
        name: spec.title().into(),
        pounds,
        force_text: pounds.map(|pounds| force(unit, pounds)),
        length,
        width,
        source: source.into(),
        standing,
        station: spec.at.as_ref().and_then(|at| at.station),
        from_port: spec.at.as_ref().and_then(|at| at.from_port),
        no_figure: None,
    })
}
