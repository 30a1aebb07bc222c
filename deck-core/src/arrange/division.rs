//! A deck divided in two levels.

use super::ArrangementKind;
use crate::length::Length;
use crate::seams::{Lane, SeamLayout};
use serde::{Deserialize, Serialize};

/// One way in which the boards of a deck lie.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Division {
    /// In what manner.
    pub kind: ArrangementKind,
    /// Strips and the seams between them; of rows, the boards and butts of all rows, row by row.
    pub layout: SeamLayout,
    /// The rows, where boards lie along the boat.
    pub rows: Vec<Lane>,
    /// The seams along the boat.
    pub joints: Vec<Joint>,
    /// What lies under them.
    pub blocks: Vec<Block>,
    /// Every board in its place.
    pub cells: Vec<Cell>,
    /// Zones that joints cross.
    pub zones: Vec<String>,
    /// True where no other choice of seams and butts is better by their own costs, the widths of the rows given.
    pub proven: bool,
}

/// A seam along the boat: a gap that lies on blocks between the members.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Joint {
    /// Counted from the bow and from port, from 1.
    pub number: usize,
    /// The strip that it divides, where strips lie athwart.
    pub strip: Option<usize>,
    /// Starboard edge of the board to port of it: where the gap starts.
    pub port: Length,
    /// Port edge of the board to starboard of it: where the gap ends.
    pub starboard: Length,
    /// Where it runs, from the bow.
    pub stretches: Vec<Stretch>,
    /// Its length.
    pub length: Length,
}

/// From one station to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stretch {
    /// Where it starts.
    pub fore: Length,
    /// Where it ends.
    pub aft: Length,
}

/// A piece of plywood under a joint, between the flanges of two members.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct Block {
    /// What is written on it; blocks of one size share it.
    pub label: String,
    /// Number of the joint above it.
    pub joint: usize,
    /// Number of the member forward of it; none where the joint starts short of one.
    pub fore_member: Option<usize>,
    /// Number of the member aft of it.
    pub aft_member: Option<usize>,
    /// Station of its fore edge.
    pub fore: Length,
    /// Station of its aft edge.
    pub aft: Length,
    /// Distance of its port edge from the deck's.
    pub port: Length,
    /// Distance of its starboard edge from the deck's port edge.
    pub starboard: Length,
    /// Extent fore and aft: the clear distance that it fills.
    pub length: Length,
    /// Extent athwart.
    pub width: Length,
    /// True where it reaches past the deck's edge, or under an opening, and is trimmed on the boat.
    pub trimmed: bool,
    /// Screws through the boards into it, a row on each side of the joint.
    pub rows: Vec<BlockRow>,
}

/// A row of screws along the boat into a block.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct BlockRow {
    /// Distance from the port edge.
    pub from_port: Length,
    /// Stations of the screws, from the bow.
    pub stations: Vec<Length>,
}

/// A board's place: the rectangle from which the outline and the openings take their part.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Cell {
    /// The board's label.
    pub label: String,
    /// Number of the board in the layout that it is, or is a part of.
    pub board: usize,
    /// The seam at its fore edge; none at the bow.
    pub fore: Option<Cut>,
    /// The seam at its aft edge; none at the stern.
    pub aft: Option<Cut>,
    /// Station at which the last board ends.
    pub finish: Length,
    /// The joint at its port edge; none at the deck's.
    pub port: Option<Cut>,
    /// The joint at its starboard edge; none at the deck's.
    pub starboard: Option<Cut>,
    /// True where the strength axis runs along the boat.
    pub along: bool,
}

/// An edge of a board at a seam or a joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Cut {
    /// Where the edge lies.
    pub at: Length,
    /// Number of the seam or the joint.
    pub number: usize,
    /// Number of the member under a seam.
    pub member: Option<usize>,
}

impl Division {
    /// Length of all joints.
    pub fn joint_length(&self) -> Length {
        self.joints.iter().map(|joint| joint.length).sum()
    }

    /// Length of all blocks.
    pub fn block_length(&self) -> Length {
        self.blocks.iter().map(|block| block.length).sum()
    }
}

impl Block {
    /// Screws into it.
    pub fn screws(&self) -> usize {
        self.rows.iter().map(|row| row.stations.len()).sum()
    }
}
