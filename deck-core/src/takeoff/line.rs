//! Counts everything above once, and rounds it up once to what is sold.

use crate::covering::{Covering, Glue, Laid};
use crate::fasteners::{Fastener, Fastening};
use crate::frame::Frame;
use crate::geometry::Limit;
use crate::length::{Length, Unit};
use crate::money::{Figure, Money};
use crate::nest::Nest;
use crate::outline::Outline;
use crate::panels::Panel;
use crate::seams::SeamLayout;
use crate::stock::Sheet;
use serde::{Deserialize, Serialize};

/// How the shop buys.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct PurchaseRules {
    /// Sheets ordered beyond those that are sawn, for spoiled and rejected ones.
    pub spare_sheets: u32,
    /// Spare fasteners for each hundred.
    pub spares_percent: u32,
    /// Fasteners in a box.
    pub per_box: u32,
    /// Length of a roll of tape.
    pub tape_roll: Length,
    /// True where tape goes on the members to keep the plywood off the aluminium.
    pub member_tape: bool,
    /// Coats of sealer on sawn edges.
    pub sealer_coats: u32,
    /// Length of edge that one can coats once.
    pub sealer_coverage: Length,
}

impl PurchaseRules {
    /// Boxes, rolls and cans of a size, without spares and with one coat.
    pub fn new(per_box: u32, tape_roll: Length, sealer_coverage: Length) -> PurchaseRules {
        PurchaseRules {
            spare_sheets: 0,
            spares_percent: 0,
            per_box,
            tape_roll,
            member_tape: false,
            sealer_coats: 1,
            sealer_coverage,
        }
    }

    /// Fasteners with their spares, in boxes.
    pub(super) fn boxed(&self, item: Item, description: String, needed: u64) -> TakeoffLine {
        let per_box = u64::from(self.per_box.max(1));
        let line = self.single(item, description, needed, "box");
        TakeoffLine { buy: line.buy.div_ceil(per_box), holds: Some(Amount::Count(per_box)), ..line }
    }

    /// Pieces with their spares, bought singly.
    pub(crate) fn single(&self, item: Item, description: String, needed: u64, unit: &str) -> TakeoffLine {
        pieces(item, description, needed, (needed * u64::from(self.spares_percent)).div_ceil(100), unit)
    }
}

/// Pieces, some of them spare, bought singly.
pub(super) fn pieces(item: Item, description: String, needed: u64, spare: u64, unit: &str) -> TakeoffLine {
    TakeoffLine {
        item,
        description,
        needed: Amount::Count(needed),
        spare: Amount::Count(spare),
        buy: needed + spare,
        unit: unit.into(),
        holds: None,
        price: None,
        cost: None,
    }
}

/// What is counted.
#[derive(Debug, Clone, Copy)]
pub struct TakeoffInput<'a> {
    /// The sheets as they are sawn.
    pub nest: &'a Nest,
    /// The stock they are taken from.
    pub stock: &'a [Sheet],
    /// The panels.
    pub panels: &'a [Panel],
    /// The seams.
    pub layout: &'a SeamLayout,
    /// The fasteners.
    pub fastening: &'a Fastening,
    /// Their kind.
    pub fastener: &'a Fastener,
    /// The members.
    pub frame: &'a Frame,
    /// The outline.
    pub outline: &'a Outline,
    /// The covering, where there is one.
    pub covering: Option<&'a Covering>,
}

/// Everything to buy, and what it weighs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Takeoff {
    /// The lines, sheets first.
    pub lines: Vec<TakeoffLine>,
    /// What the sheets on the order cost, where they have prices.
    pub sheets_cost: Option<Money>,
    /// Weight of the new boards in pounds, dry. Mass only: it says nothing of what the boat may carry.
    pub deck_weight_lb: f64,
}

/// One material.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct TakeoffLine {
    /// What sort of material it is.
    pub item: Item,
    /// What the shop calls it.
    pub description: String,
    /// What the deck takes.
    pub needed: Amount,
    /// What is added for spoilage and waste.
    pub spare: Amount,
    /// How many to buy, or to take from the rack.
    pub buy: u64,
    /// What one of them is: sheet, box, roll, can.
    pub unit: String,
    /// What one holds, where that is more than one piece.
    pub holds: Option<Amount>,
    /// Price of one, where given.
    pub price: Option<Money>,
    /// What they cost, where priced.
    pub cost: Option<Money>,
}

/// The sort of material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Item {
    /// A sheet to buy.
    Sheet,
    /// An offcut from the rack.
    Offcut,
    /// Fasteners.
    Fastener,
    /// Tape over the seams.
    SeamTape,
    /// Tape on the members.
    MemberTape,
    /// Sealer for sawn edges.
    EdgeSealer,
    /// Roll goods.
    Covering,
    /// Glue under them.
    Adhesive,
    /// Angles beside flanges that are too narrow.
    Angle,
    /// Cleats beside flanges that are too narrow.
    Cleat,
    /// Screws that hold angles and cleats.
    MendScrew,
    /// Bolts of what is bolted down again.
    Bolt,
    /// Plates under the deck.
    Plate,
}

impl Item {
    /// Its word in a job file.
    pub fn word(self) -> &'static str {
        match self {
            Item::Sheet => "sheet",
            Item::Offcut => "offcut",
            Item::Fastener => "fastener",
            Item::SeamTape => "seam-tape",
            Item::MemberTape => "member-tape",
            Item::EdgeSealer => "edge-sealer",
            Item::Covering => "covering",
            Item::Adhesive => "adhesive",
            Item::Angle => "angle",
            Item::Cleat => "cleat",
            Item::MendScrew => "mend-screw",
            Item::Bolt => "bolt",
            Item::Plate => "plate",
        }
    }
}

/// A count of pieces, a length, or a volume.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "measure", content = "amount", rename_all = "kebab-case")]
pub enum Amount {
    /// Pieces.
    Count(u64),
    /// Running length.
    Length(Length),
    /// US gallons.
    Gallons(Figure),
}

/// Counts what a deck takes.
pub fn takeoff(input: &TakeoffInput<'_>, rules: &PurchaseRules) -> Takeoff {
    let mut lines = sheets(input, rules);
    let costs: Option<Vec<Money>> =
        lines.iter().filter(|line| line.item == Item::Sheet).map(|line| line.cost).collect();
    let sheets_cost = costs.filter(|costs| !costs.is_empty()).map(|costs| costs.into_iter().sum());
    lines.push(fasteners(input, rules));
    lines.push(by_length(Item::SeamTape, "Tape over seams", seam_length(input), rules.tape_roll, "roll"));
    if rules.member_tape {
        let length = member_length(input);
        lines.push(by_length(Item::MemberTape, "Tape on members, under the boards", length, rules.tape_roll, "roll"));
    }
    if rules.sealer_coats > 0 {
        let coats = i64::from(rules.sealer_coats);
        let words = format!("Edge sealer, {coats} coats");
        lines.push(by_length(Item::EdgeSealer, &words, edge_length(input) * coats, rules.sealer_coverage, "can"));
    }
    lines.extend(input.covering.and_then(|covering| covering.laid.as_ref()).map(roll_goods));
    lines.extend(input.covering.and_then(|covering| covering.glue.as_ref()).map(glue));
    let tenths: f64 = input.panels.iter().filter_map(|panel| panel.weight_lb).map(|pounds| pounds * 10.0).sum();
    Takeoff { lines, sheets_cost, deck_weight_lb: tenths.round() / 10.0 }
}

/// The stock that is sawn, in the order of the rack; waste inside a part is bought with its part. Spares go with the sheet that most are sawn from.
fn sheets(input: &TakeoffInput<'_>, rules: &PurchaseRules) -> Vec<TakeoffLine> {
    let from_stock = || input.nest.sheets.iter().filter(|sheet| sheet.inside.is_none());
    let used = |label: &str| from_stock().filter(|sheet| sheet.stock == label).count() as u64;
    let most = input.stock.iter().filter(|sheet| !sheet.offcut).map(|sheet| used(&sheet.label)).max().unwrap_or(0);
    let mut spares = u64::from(rules.spare_sheets);
    let mut lines = Vec::new();
    for sheet in input.stock {
        let needed = used(&sheet.label);
        if needed == 0 {
            continue;
        }
        let spare = if !sheet.offcut && needed == most { std::mem::take(&mut spares) } else { 0 };
        let buy = needed + spare;
        let cost = sheet.price.map(|price| price * i64::try_from(buy).unwrap_or(i64::MAX));
        lines.push(TakeoffLine {
            item: if sheet.offcut { Item::Offcut } else { Item::Sheet },
            description: sheet.label.clone(),
            needed: Amount::Count(needed),
            spare: Amount::Count(spare),
            buy,
            unit: if sheet.offcut { "offcut".into() } else { "sheet".into() },
            holds: None,
            price: sheet.price,
            cost,
        });
    }
    lines
}

fn fasteners(input: &TakeoffInput<'_>, rules: &PurchaseRules) -> TakeoffLine {
    rules.boxed(Item::Fastener, input.fastener.kind.clone(), input.fastening.count as u64)
}

fn by_length(item: Item, description: &str, needed: Length, holds: Length, unit: &str) -> TakeoffLine {
    TakeoffLine {
        item,
        description: description.into(),
        needed: Amount::Length(needed),
        spare: Amount::Length(Length::ZERO),
        buy: u64::try_from(needed.steps_of(holds)).unwrap_or(0),
        unit: unit.into(),
        holds: Some(Amount::Length(holds)),
        price: None,
        cost: None,
    }
}

/// What this boat takes off the rolls; what other boats take is in the cut list alone.
fn roll_goods(laid: &Laid) -> TakeoffLine {
    TakeoffLine {
        item: Item::Covering,
        description: laid.roll.clone(),
        needed: Amount::Length(laid.length),
        spare: Amount::Length(Length::ZERO),
        buy: u64::from(laid.buy),
        unit: sold_in(laid).into(),
        holds: Some(Amount::Length(laid.sold_by)),
        price: laid.price,
        cost: laid.price.map(|price| price * i64::from(laid.buy)),
    }
}

/// What one of what is bought is called.
fn sold_in(laid: &Laid) -> &'static str {
    match laid.sold_by {
        whole if whole == laid.roll_length => "roll",
        foot if foot == Length::of(1, Unit::Foot) => "foot",
        metre if metre == Length::of(1, Unit::Metre) => "metre",
        _ => "length",
    }
}

/// By the least coverage, rounded up once.
fn glue(glue: &Glue) -> TakeoffLine {
    TakeoffLine {
        item: Item::Adhesive,
        description: format!("{}, by the least coverage", capitalised(&glue.adhesive.kind)),
        needed: Amount::Gallons(glue.gallons_most),
        spare: Amount::Gallons(Figure::ZERO),
        buy: u64::from(glue.cans),
        unit: "can".into(),
        holds: Some(Amount::Gallons(glue.adhesive.can)),
        price: None,
        cost: None,
    }
}

fn capitalised(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

fn seam_length(input: &TakeoffInput<'_>) -> Length {
    input.layout.seams.iter().filter_map(|seam| seam.length).sum()
}

/// Every sawn and factory edge of every panel, openings included.
fn edge_length(input: &TakeoffInput<'_>) -> Length {
    let openings = input.panels.iter().flat_map(|panel| &panel.openings).map(|opening| opening.shape.perimeter());
    input.panels.iter().map(|panel| panel.shape.perimeter()).chain(openings).sum()
}

/// The length of every member under the deck, measured at its middle or at the deck's end.
fn member_length(input: &TakeoffInput<'_>) -> Length {
    let under = |member: &crate::frame::CrossMember| {
        let station = member.centre().max(Length::ZERO).min(input.outline.length());
        let limit = if station == input.outline.length() { Limit::Fore } else { Limit::Aft };
        let low = member.port_end.unwrap_or(Length::ZERO);
        let high = member.starboard_end.unwrap_or(input.outline.beam());
        let stretches = input.outline.path().breadths(station, limit);
        stretches
            .iter()
            .map(|(port, starboard)| (high.min(*starboard) - low.max(*port)).max(Length::ZERO))
            .sum::<Length>()
    };
    input.frame.members().iter().map(under).sum()
}
