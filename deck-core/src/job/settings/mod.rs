//! The settings of a plan: what the job gives, and the defaults for the rest, with those that it assumed.

mod arranging;
pub(super) mod asked;
mod covering;
mod errors;
mod holes;
mod mending;
mod old_deck;
mod patch;

pub use covering::Cover;
pub use errors::Tolerance;
pub use holes::FittingSettings;
pub use mending::Mending;
pub use old_deck::OldDeck;
pub use patch::PatchSettings;

pub use arranging::Arranging;

use super::check::Parts;
use super::specs::{Face, Paper};
use crate::fasteners::{Fastener, Schedule};
use crate::length::{Length, Notation};
use crate::openings::OpeningRules;
use crate::published::{Preset, Standing, defaults};
use crate::seams::Rules;
use crate::stock::Saw;
use serde::{Deserialize, Serialize};

/// Every setting with a value, in the shape in which the rooms below take it.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Settings {
    /// What a layout of seams must keep.
    pub rules: Rules,
    /// Which fastener, and at what distances.
    pub schedule: Schedule,
    /// What the blade eats, and how it may cut.
    pub saw: Saw,
    /// How lengths are written on paper.
    pub notation: Notation,
    /// Everything else.
    pub shop: Shop,
    /// What the boards are held against where their strength is asked for.
    pub service: Service,
    /// In what manner the boards lie.
    pub arranging: Arranging,
    /// The old deck, where something is said of it.
    pub old_deck: Option<OldDeck>,
    /// The covering, where there is one.
    pub cover: Option<Cover>,
    /// The errors that the plan reckons with; none: the job asks for none.
    pub tolerance: Option<Tolerance>,
    /// What narrow flanges are mended with; none: the job does not ask.
    pub narrow_flange: Option<Mending>,
    /// The clearances that openings keep.
    pub openings: OpeningRules,
    /// What is bolted down again, where the job says so.
    pub fittings: Option<FittingSettings>,
    /// What patches keep to, where part of the old deck stays.
    pub patch: Option<PatchSettings>,
    /// The defaults that were taken and that no source settles, in the order of the table of defaults.
    pub assumed: Vec<Assumed>,
}

/// What the shop holds to and buys by.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Shop {
    /// The face that is up on the saw.
    pub face: Face,
    /// Wall thickness of those flanges where it was not measured.
    pub wall: Length,
    /// Bearing below which the plan cautions.
    pub preferred_bearing: Length,
    /// Members under a board below which the plan cautions.
    pub preferred_supports: usize,
    /// Greatest overhang past the first and the last member.
    pub overhang: Length,
    /// Greatest overhang past a member's end.
    pub side_overhang: Length,
    /// How many layouts to show.
    pub layouts: usize,
    /// Sheets ordered beyond those the plan uses.
    pub spare_sheets: u32,
    /// Spare fasteners in a hundred.
    pub spares_percent: u32,
    /// Fasteners in a box.
    pub per_box: u32,
    /// Coats of sealer on sawn edges.
    pub sealer_coats: u32,
    /// Length of edge that one can of sealer coats once.
    pub edge_sealer_coverage: Length,
    /// Width of the tape on the members.
    pub tape_width: Length,
    /// Its thickness.
    pub tape_thickness: Length,
    /// Length of a roll of it.
    pub tape_roll: Length,
    /// Whether something keeps the plywood off the aluminium.
    pub barrier: bool,
    /// Space under the deck for the points of screws; none: not known.
    pub clearance: Option<Length>,
    /// Paper of the job packet.
    pub paper: Paper,
    /// Least distance from a fastener to an old hole, in thousandths of the larger diameter.
    pub old_hole_clear: i64,
}

/// The service that boards are held against.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Service {
    /// True at 16 percent of moisture or more.
    pub wet: bool,
    /// Load duration factor.
    pub duration: f64,
    /// Largest sag as a part of the bay: 360 stands for l/360.
    pub deflection: f64,
}

/// A default that a plan rests on and that no source settles.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Assumed {
    /// JSON pointer of the setting in the job.
    pub pointer: String,
    /// The setting in words.
    pub setting: String,
    /// The value that was taken, as the shop writes it.
    pub value: String,
    /// How sure it is.
    pub mark: Standing,
    /// Where it comes from.
    pub source: String,
}

impl Settings {
    /// `wall_missing` tells that a member's wall was not measured, `too_wide` that no sheet reaches across.
    pub(super) fn resolve(parts: &Parts<'_>, wall_missing: bool, too_wide: bool) -> Settings {
        let mut take = Resolver { notation: parts.notation(), assumed: Vec::new() };
        let gap = take.length(parts.gap, &defaults::GAP);
        let end_tolerance = take.length(parts.end_tolerance, &defaults::END_TOLERANCE);
        let wall = take.length((!wall_missing).then_some(defaults::WALL.value), &defaults::WALL);
        let schedule = take.schedule(parts);
        let spec = parts.shop;
        let least_bearing = take.length(spec.least_bearing, &defaults::LEAST_BEARING);
        let least_width = take.length(spec.least_panel_width, &defaults::LEAST_WIDTH);
        // A least above the default of what is preferred lifts that, too.
        let preferred_width = take.length(spec.preferred_panel_width, &defaults::PREFERRED_WIDTH.at_least(least_width));
        let rules = Rules::new(least_bearing)
            .gap(gap)
            .end_tolerance(end_tolerance)
            .widths(least_width, preferred_width)
            .rows(schedule.edge_in_ply, schedule.edge_in_metal);
        let saw = take.saw(parts);
        let shop = take.shop(parts, wall, least_bearing);
        let service = take.service(parts);
        let arranging = take.arranging(parts, too_wide, schedule.edge_spacing);
        let (old_deck, cover) = (take.old_deck(parts), take.cover(parts));
        let tolerance = parts.tolerance.map(|spec| Tolerance::resolve(&mut take, spec));
        let narrow_flange = parts.narrow_flange.map(|spec| Mending::resolve(&mut take, spec, schedule.edge_spacing));
        take.lid_clearance(parts);
        let (openings, fittings, patch) = (take.opening_rules(parts), take.fittings(parts), take.patch(parts));
        Settings {
            rules,
            schedule,
            saw,
            notation: take.notation,
            shop,
            service,
            arranging,
            old_deck,
            cover,
            tolerance,
            narrow_flange,
            openings,
            fittings,
            patch,
            assumed: take.in_order(),
        }
    }
}

impl Preset<Length> {
    fn at_least(mut self, least: Length) -> Preset<Length> {
        self.value = self.value.max(least);
        self
    }
}

/// Takes what is given or the default, and keeps account of the defaults.
struct Resolver {
    notation: Notation,
    assumed: Vec<Assumed>,
}

impl Resolver {
    fn length(&mut self, given: Option<Length>, preset: &Preset<Length>) -> Length {
        let notation = self.notation;
        self.take(given, preset, |length| notation.text(length))
    }

    fn count(&mut self, given: Option<u32>, preset: &Preset<u32>) -> u32 {
        self.take(given, preset, |count| count.to_string())
    }

    fn flag(&mut self, given: Option<bool>, preset: &Preset<bool>) -> bool {
        self.take(given, preset, |flag| if flag { "yes".into() } else { "no".into() })
    }

    fn take<T: Copy>(&mut self, given: Option<T>, preset: &Preset<T>, text: impl Fn(T) -> String) -> T {
        given.unwrap_or_else(|| {
            if preset.is_assumed() {
                self.assumed.push(Assumed {
                    pointer: preset.pointer.into(),
                    setting: preset.setting.into(),
                    value: text(preset.value),
                    mark: preset.standing,
                    source: preset.source.into(),
                });
            }
            preset.value
        })
    }

    /// A default of several things is told once.
    fn take_once<T: Copy>(&mut self, preset: &Preset<T>, text: impl Fn(T) -> String) -> T {
        let told = self.assumed.iter().any(|assumed| assumed.pointer == preset.pointer);
        if told { preset.value } else { self.take(None, preset, text) }
    }

    fn once(&mut self, given: Option<Length>, preset: &Preset<Length>) -> Length {
        let notation = self.notation;
        given.unwrap_or_else(|| self.take_once(preset, |length| notation.text(length)))
    }

    fn schedule(&mut self, parts: &Parts<'_>) -> Schedule {
        let spec = parts.fastening;
        // The figures of one screw say nothing of another: with a fastener of the shop's own, the rest is a guess.
        let own = spec.kind.as_deref().is_some_and(|kind| kind != defaults::KIND.value)
            || spec.diameter.is_some_and(|diameter| diameter != defaults::DIAMETER.value);
        let reason = "that of the default screw; the job gives another";
        let settle = |preset: Preset<Length>| if own { preset.unsettled(reason) } else { preset };
        let mut name = defaults::KIND;
        if own {
            name = name.unsettled("the job gives a diameter and no kind");
            name.value = "deck screw";
        }
        let kind = self.take(spec.kind.as_deref(), &name, str::to_owned).to_owned();
        let diameter = self.length(spec.diameter, &settle(defaults::DIAMETER));
        let mut fastener = Fastener::new(kind, diameter, self.length(spec.length, &settle(defaults::LENGTH)));
        let threads = if own { defaults::THREADS.unsettled(reason) } else { defaults::THREADS };
        fastener.threads_per_inch = self.count(spec.threads_per_inch, &threads);
        fastener.drill_point = self.length(spec.drill_point, &defaults::DRILL_POINT);
        let edge = self.length(spec.edge_spacing, &defaults::EDGE_SPACING);
        let field = self.length(spec.field_spacing, &defaults::FIELD_SPACING);
        let in_ply = self.length(spec.edge_distance, &defaults::EDGE_DISTANCE);
        let by_diameter = diameter.part(defaults::EDGE_DISTANCE_METAL_HALVES.value, 2);
        let in_metal = spec.edge_distance_metal.unwrap_or(by_diameter);
        let end = self.length(spec.end_distance, &defaults::END_DISTANCE);
        let stagger = self.flag(spec.stagger, &defaults::STAGGER);
        let reuse = self.flag(spec.reuse_old_holes, &defaults::REUSE);
        let schedule = Schedule::new(fastener, edge, field, in_ply).edges(in_ply, in_metal).end_distance(end);
        schedule.stagger(stagger).reuse(reuse)
    }

    fn saw(&mut self, parts: &Parts<'_>) -> Saw {
        let spec = parts.saw;
        let notation = self.notation;
        Saw {
            kerf: self.length(spec.kerf, &defaults::KERF),
            trim: self.length(spec.trim, &defaults::TRIM),
            stages: spec.stages,
            first: spec.first,
            keep: Some(self.take(spec.keep, &defaults::KEEP, |(length, width)| {
                format!("{} by {}", notation.text(length), notation.text(width))
            })),
        }
    }

    fn shop(&mut self, parts: &Parts<'_>, wall: Length, least_bearing: Length) -> Shop {
        let (shop, fastening) = (parts.shop, parts.fastening);
        let bearing = defaults::PREFERRED_BEARING.at_least(least_bearing);
        let whole = |count: u32| usize::try_from(count).unwrap_or(usize::MAX);
        Shop {
            face: parts.saw.face.unwrap_or_default(),
            wall,
            preferred_bearing: self.length(shop.preferred_bearing, &bearing),
            preferred_supports: whole(self.count(shop.preferred_supports, &defaults::PREFERRED_SUPPORTS)),
            overhang: self.length(shop.overhang, &defaults::OVERHANG),
            side_overhang: self.length(shop.side_overhang, &defaults::SIDE_OVERHANG),
            layouts: whole(self.count(shop.layouts, &defaults::LAYOUTS)),
            spare_sheets: self.count(shop.spare_sheets, &defaults::SPARE_SHEETS),
            spares_percent: self.count(fastening.spares_percent, &defaults::SPARES),
            per_box: self.count(fastening.per_box, &defaults::BOX),
            sealer_coats: self.count(shop.sealer_coats, &defaults::SEALER_COATS),
            edge_sealer_coverage: self.length(shop.edge_sealer_coverage, &defaults::SEALER_COVERAGE),
            tape_width: self.length(shop.tape_width, &defaults::TAPE_WIDTH),
            tape_thickness: self.length(shop.tape_thickness, &defaults::TAPE_THICKNESS),
            tape_roll: self.length(shop.tape_roll, &defaults::TAPE_ROLL),
            barrier: self.flag(shop.barrier, &defaults::BARRIER),
            clearance: shop.clearance,
            paper: asked::paper(parts.unit, shop),
            old_hole_clear: self.old_hole_clear(parts),
        }
    }

    /// Without a panel there is no figure that a default of these could stand behind.
    fn service(&mut self, parts: &Parts<'_>) -> Service {
        let spec = parts.span;
        if spec.panel.is_none() {
            let (wet, duration) = (spec.wet.unwrap_or(defaults::WET.value), spec.duration);
            let deflection = spec.deflection.unwrap_or(defaults::DEFLECTION.value);
            return Service { wet, duration: duration.unwrap_or(defaults::DURATION.value), deflection };
        }
        Service {
            wet: self.flag(spec.wet, &defaults::WET),
            duration: self.take(spec.duration, &defaults::DURATION, |factor| factor.to_string()),
            deflection: self.take(spec.deflection, &defaults::DEFLECTION, |part| format!("l/{part}")),
        }
    }

    fn in_order(mut self) -> Vec<Assumed> {
        let place = |assumed: &Assumed| defaults::ALL.iter().position(|row| row.pointer == assumed.pointer);
        self.assumed.sort_by_key(place);
        self.assumed
    }
}
