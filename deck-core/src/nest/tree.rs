//! The cut tree: what the saw does to one sheet, in the order in which it does it.

use crate::length::Length;
use crate::stock::SawLine;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A piece of a sheet and what becomes of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged, try_from = "Written")]
pub enum Tree {
    /// It is sawn through.
    Cut(Box<Cut>),
    /// It is a part.
    Part {
        /// The part's label.
        part: String,
    },
    /// It is worth keeping.
    Offcut {
        /// Always true.
        offcut: Yes,
    },
    /// It is waste.
    Waste {
        /// Always true.
        waste: Yes,
    },
}

/// A saw line through the whole of a piece.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Cut {
    /// The direction in which the saw line runs on the sheet: `length` is a rip.
    pub cut: SawLine,
    /// The fence setting: from the piece's own origin edge, across the saw line, to the near side of the kerf.
    pub at: Length,
    /// What the blade eats of this piece: less than the saw's kerf where the blade runs off the far edge.
    pub kerf: Length,
    /// What lies before the kerf, and what lies behind it, if anything.
    pub children: (Tree, Option<Tree>),
}

/// The word `true` in JSON.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Yes;

impl Serialize for Yes {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_bool(true)
    }
}

impl<'de> Deserialize<'de> for Yes {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Yes, D::Error> {
        if bool::deserialize(deserializer)? { Ok(Yes) } else { Err(serde::de::Error::custom("only true stands here")) }
    }
}

/// A node as it is read: all forms at once, so that a deep tree is read in one pass.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    cut: Option<SawLine>,
    at: Option<Length>,
    kerf: Option<Length>,
    children: Option<Box<(Tree, Option<Tree>)>>,
    part: Option<String>,
    offcut: Option<Yes>,
    waste: Option<Yes>,
}

impl TryFrom<Written> for Tree {
    type Error = &'static str;
    fn try_from(written: Written) -> Result<Tree, &'static str> {
        let Written { cut, at, kerf, children, part, offcut, waste } = written;
        match (cut, at, kerf, children, part, offcut, waste) {
            (Some(cut), Some(at), Some(kerf), Some(children), None, None, None) => {
                Ok(Tree::Cut(Box::new(Cut { cut, at, kerf, children: *children })))
            }
            (None, None, None, None, Some(part), None, None) => Ok(Tree::Part { part }),
            (None, None, None, None, None, Some(offcut), None) => Ok(Tree::Offcut { offcut }),
            (None, None, None, None, None, None, Some(waste)) => Ok(Tree::Waste { waste }),
            _ => Err("a piece of a cut tree is a cut, a part, an offcut or waste"),
        }
    }
}

/// A piece met on a walk through a cut tree, where it lies on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Piece<'t> {
    /// What becomes of it.
    pub tree: &'t Tree,
    /// From the sheet's corner along its length.
    pub x: Length,
    /// From the sheet's corner along its width.
    pub y: Length,
    /// Extent along `x`.
    pub length: Length,
    /// Extent along `y`.
    pub width: Length,
}

impl Tree {
    /// A part.
    pub fn part(label: impl Into<String>) -> Tree {
        Tree::Part { part: label.into() }
    }

    /// A piece worth keeping.
    #[must_use]
    pub fn offcut() -> Tree {
        Tree::Offcut { offcut: Yes }
    }

    /// Waste.
    #[must_use]
    pub fn waste() -> Tree {
        Tree::Waste { waste: Yes }
    }

    /// Every piece in sawing order, cut ones before what they are cut into, on a sheet of that size.
    ///
    /// # Examples
    /// ```
    /// use deck_core::{Length, nest::{Tree, Piece}};
    /// let tree: Tree = serde_json::from_str(
    ///     r#"{"cut": "length", "at": "30 in", "kerf": "0.125 in", "children": [{"part": "side"}, {"waste": true}]}"#,
    /// ).unwrap();
    /// let pieces: Vec<Piece> = tree.walk(Length::inches(96), Length::inches(48)).collect();
    /// assert_eq!(pieces[2].y, "30.125 in".parse()?);
    /// assert_eq!(pieces[2].width, "17.875 in".parse()?);
    /// # Ok::<(), deck_core::Error>(())
    /// ```
    pub fn walk(&self, length: Length, width: Length) -> impl Iterator<Item = Piece<'_>> {
        let mut waiting = vec![Piece { tree: self, x: Length::ZERO, y: Length::ZERO, length, width }];
        std::iter::from_fn(move || {
            let piece = waiting.pop()?;
            if let Tree::Cut(cut) = piece.tree {
                let (first, second) = cut.split(piece);
                waiting.extend(second);
                waiting.push(first);
            }
            Some(piece)
        })
    }
}

impl Cut {
    fn split<'t>(&'t self, whole: Piece<'t>) -> (Piece<'t>, Option<Piece<'t>>) {
        let behind = self.at + self.kerf;
        let (mut first, mut second) = (Piece { tree: &self.children.0, ..whole }, whole);
        match self.cut {
            SawLine::Length => {
                first.width = self.at;
                second.y += behind;
                second.width -= behind;
            }
            SawLine::Width => {
                first.length = self.at;
                second.x += behind;
                second.length -= behind;
            }
        }
        (first, self.children.1.as_ref().map(|tree| Piece { tree, ..second }))
    }
}
