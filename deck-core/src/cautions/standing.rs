//! The cautions that hold for every job.

use super::Caution;

/// The standing cautions.
///
/// Clause numbers are those of the named rules as known to the trade; they were not re-read for this list, and local
/// rules go before them.
pub fn standing() -> Vec<Caution> {
    const ROWS: [(&str, &str, &str, &str); 13] = [
        (
            "structure",
            "This plan gives sizes and positions, and figures from published tables where a panel rating is given. It gives no load rating: for loads, seats, towers and anything people rely on, ask a licensed professional.",
            "No published rule sets a live load for the deck of a private pontoon boat.",
            "local codes and licensed practice; the boat builder's instructions",
        ),
        (
            "capacity",
            "The weight of new boards is given as mass only. The boat's capacity label is not recomputed here.",
            "The US federal capacity rule is for monohull boats under 20 ft; a pontoon boat's label follows a voluntary standard.",
            "33 CFR 183; the builder's label",
        ),
        (
            "dust",
            "Saw in the open or with extraction, with a mask and eye protection; keep dust of treated wood off skin and food.",
            "Wood dust, and preservatives in it, harm when breathed or swallowed.",
            "29 CFR 1910.1200 and the supplier's safety data sheet",
        ),
        (
            "offcuts",
            "Never burn treated offcuts; dispose of them and of the old boards as the state rules say.",
            "Smoke and ash of treated wood are poisonous.",
            "state and local waste rules",
        ),
        (
            "sparks",
            "Grinding and cutting make sparks: clear or cover what burns within 35 ft, and keep a fire watch.",
            "Old covering, glue, foam and fuel vapour catch fire.",
            "NFPA 51B; 29 CFR 1910.252",
        ),
        (
            "fuel",
            "Before cutting, heating or grinding find out what lies below: fuel line, tank, wiring, foam-filled tubes.",
            "A blade or a flame through the deck reaches what cannot be seen from above.",
            "the boat builder's drawings; ABYC practice",
        ),
        (
            "battery",
            "Disconnect batteries first, the negative cable first.",
            "A wrench across the terminals, or a short while screwing, starts a fire.",
            "the battery maker's instructions",
        ),
        (
            "lifting",
            "Old wet boards weigh far more than new ones: lift with two people.",
            "Soaked plywood has been weighed at 100 to 140 lb a sheet (common practice, no source).",
            "local rules for lifting",
        ),
        (
            "solvents",
            "Glue, sealer and filler: air the place, wear gloves, keep flames away, and follow the can.",
            "Vapours burn and harm.",
            "the product's safety data sheet",
        ),
        (
            "dissimilar-metals",
            "Choose fasteners whose metal and coating suit aluminium and the water the boat lies in; bed them.",
            "Different metals in contact and wet corrode, the less noble one first.",
            "the fastener maker's data; MIL-STD-889",
        ),
        (
            "unsealed-edge",
            "Seal every cut edge, hole and notch before the board goes down, two to three coats.",
            "Plywood drinks through its edges; treatment does not reach the middle of a cut sheet.",
            "common practice, no source",
        ),
        (
            "frame",
            "Measure the diagonals, square the frame and brace it before any new board goes down.",
            "The old deck held the frame square; without it the frame can rack.",
            "common practice, no source",
        ),
        (
            "measure-twice",
            "Check every station on the boat against this plan before the first cut.",
            "A tape reads within 1/32 to 1/16; old boards are evidence, not truth.",
            "common practice, no source",
        ),
    ];
    ROWS.iter().map(|(id, text, reason, rule)| Caution::standing(id, text, reason, rule)).collect()
}
