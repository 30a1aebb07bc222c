//! The published instances: one reader for all sections.
//!
//! An instance's lengths are whole numbers of no unit; here one of them is a millimetre.

use crate::args::Args;
use deck_core::nest::{FillPart, Grain, Nest, Part};
use deck_core::stock::Sheet;
use deck_core::{Area, Length, Money, Unit};
use serde::Deserialize;
use serde_json::Value;

/// One order or one sheet to fill, and what is known of it.
#[derive(Debug, Clone, Deserialize)]
pub(crate) struct Instance {
    #[serde(default)]
    pub(crate) name: String,
    /// Length and width of the one kind of sheet.
    bin: Option<[i64; 2]>,
    /// How many there are of it; in no file, for orders made here.
    #[serde(skip)]
    sheets: Option<u32>,
    /// Several kinds, where there are.
    #[serde(default)]
    bins: Vec<Bin>,
    pub(crate) items: Vec<Item>,
    #[serde(default)]
    known: Value,
}

#[derive(Debug, Clone, Deserialize)]
struct Bin {
    w: i64,
    h: i64,
    stock: u32,
}

#[derive(Debug, Clone, Deserialize)]
pub(crate) struct Item {
    pub(crate) w: i64,
    pub(crate) h: i64,
    pub(crate) demand: Option<u32>,
    #[serde(default)]
    value: i64,
}

/// Ten-thousandths in one unit of value.
pub(crate) const UNIT: i128 = 10_000;

/// What is known of a figure: it lies between the two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Known {
    pub(crate) least: Option<i64>,
    pub(crate) most: Option<i64>,
}

/// The chosen instances of a file; none with a word about it where the folder is not there.
pub(crate) fn instances(args: &Args, file: &str) -> Result<Vec<Instance>, String> {
    let path = args.data.join(file);
    if !there(args, file) {
        return Ok(Vec::new());
    }
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    let all: Vec<Instance> = serde_json::from_str(&text).map_err(|error| format!("{}: {error}", path.display()))?;
    Ok(args.chosen(all, |instance| &instance.name))
}

/// Whether the folder is there; said where it is not.
pub(crate) fn there(args: &Args, what: &str) -> bool {
    let there = args.data.exists();
    if !there {
        println!("No figures from {what}: the folder {} is not there.\n", args.data.display());
    }
    there
}

impl Instance {
    /// Every kind of sheet; the only kind without limit.
    pub(crate) fn stock(&self) -> Vec<Sheet> {
        let only = self.bin.map(|[w, h]| {
            let sheet = Sheet::new("sheet", length(w), length(h));
            self.sheets.map_or(sheet.clone(), |count| sheet.count(count))
        });
        let kind =
            |bin: &Bin| Sheet::new(format!("{}x{}", bin.w, bin.h), length(bin.w), length(bin.h)).count(bin.stock);
        only.into_iter().chain(self.bins.iter().map(kind)).collect()
    }

    /// The items, labelled by their place in the list.
    pub(crate) fn parts(&self, turned: bool) -> Vec<Part> {
        let grain = if turned { Grain::Any } else { Grain::Length };
        let part = |(index, item): (usize, &Item)| {
            let part = Part::new(index.to_string(), length(item.w), length(item.h));
            part.count(item.demand.unwrap_or(1)).grain(grain)
        };
        self.items.iter().enumerate().map(part).collect()
    }

    /// The items as parts to fill a sheet with, with their values; `limited` to the copies in demand.
    pub(crate) fn fill_parts(&self, turned: bool, limited: bool) -> Vec<FillPart> {
        let part = |(part, item): (Part, &Item)| {
            let part = FillPart::from(part).value(Money::from_ten_thousandths(i128::from(item.value) * UNIT));
            if limited { part } else { part.unlimited() }
        };
        self.parts(turned).into_iter().zip(&self.items).map(part).collect()
    }

    /// The items as parts of a fill that are worth their area.
    pub(crate) fn area_parts(&self, turned: bool) -> Vec<FillPart> {
        self.parts(turned).into_iter().map(FillPart::from).collect()
    }

    /// How many sheets an area of bought sheets is, rounded up; only where there is one kind.
    pub(crate) fn sheets_of(&self, area: Area) -> i64 {
        let [w, h] = self.bin.unwrap_or([1, 1]);
        let sheet = Area::of(length(w), length(h)).square_nanometres();
        i64::try_from((area.square_nanometres() + sheet - 1) / sheet).unwrap_or(i64::MAX)
    }

    /// What is known under a key: its proven value, or bounds.
    pub(crate) fn known(&self, key: &str) -> Known {
        let figure = |name: &str| self.known.get(key).and_then(|known| known.get(name)).and_then(Value::as_i64);
        let opt = figure("opt");
        Known { least: opt.or(figure("lb")), most: opt.or(figure("ub")) }
    }

    /// Whether all items fit the sheet, where that is known.
    pub(crate) fn fits(&self, key: &str) -> Option<bool> {
        self.known.get(key).and_then(Value::as_bool)
    }

    /// The same order with so many sheets.
    pub(crate) fn only(mut self, sheets: u32) -> Instance {
        self.sheets = Some(sheets);
        self
    }

    /// Copies in all.
    pub(crate) fn copies(&self) -> u32 {
        self.items.iter().map(|item| item.demand.unwrap_or(1)).sum()
    }

    /// Area of all copies in square units.
    pub(crate) fn area(&self) -> i64 {
        self.items.iter().map(|item| item.w * item.h * i64::from(item.demand.unwrap_or(1))).sum()
    }

    /// The total area of the copies that found no place.
    pub(crate) fn area_left(&self, nest: &Nest) -> Area {
        let left = nest.unplaced.iter().map(|out| {
            let item = out.part.parse::<usize>().ok().and_then(|index| self.items.get(index));
            let one = item.map_or(Area::ZERO, |item| Area::of(length(item.w), length(item.h)));
            one.square_nanometres() * i128::from(out.count)
        });
        Area::from_square_nanometres(left.sum())
    }
}

impl Known {
    /// One value is known to be the best.
    pub(crate) fn settled(self) -> bool {
        self.least.is_some() && self.least == self.most
    }

    pub(crate) fn text(self) -> String {
        let text = |figure: Option<i64>| figure.map_or_else(|| "?".to_owned(), |figure| figure.to_string());
        if self.settled() { text(self.least) } else { format!("{}…{}", text(self.least), text(self.most)) }
    }
}

pub(crate) fn length(units: i64) -> Length {
    Length::of(units, Unit::Millimetre)
}
