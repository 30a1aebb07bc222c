//! How long words are in DejaVu Sans, and how they are broken into lines.
//!
//! The writers name or embed this font, and set each text to the length computed here, so that a layout holds whatever
//! font a screen has.

use super::{Micrometres, TextSize};
use crate::math::round_half_even;

/// Units to the em in DejaVu Sans (`head` table).
const UNITS: i128 = 2048;

/// Advance widths of space to tilde (U+0020 to U+007E), sixteen a row.
///
/// Source: `hmtx` tables of DejaVu Sans and DejaVu Sans Bold 2.37, read by a program from the files of the crate `dejavu`
/// 2.37.0; a test reads them again.
#[rustfmt::skip]
const ASCII: [[u16; 95]; 2] = [
    [
        651, 821, 942, 1716, 1303, 1946, 1597, 563, 799, 799, 1024, 1716, 651, 739, 651, 690,
        1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 690, 690, 1716, 1716, 1716, 1087,
        2048, 1401, 1405, 1430, 1577, 1294, 1178, 1587, 1540, 604, 604, 1343, 1141, 1767, 1532, 1612,
        1235, 1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799, 690, 799, 1716, 1024,
        1024, 1255, 1300, 1126, 1300, 1260, 721, 1300, 1298, 569, 569, 1186, 569, 1995, 1298, 1253,
        1300, 1300, 842, 1067, 803, 1298, 1212, 1675, 1212, 1212, 1075, 1303, 690, 1303, 1716,
    ],
    [
        713, 934, 1067, 1716, 1425, 2052, 1786, 627, 936, 936, 1071, 1716, 778, 850, 778, 748,
        1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 1425, 819, 819, 1716, 1716, 1716, 1188,
        2048, 1585, 1561, 1503, 1700, 1399, 1399, 1681, 1714, 762, 762, 1587, 1305, 2038, 1714, 1741,
        1501, 1741, 1577, 1475, 1397, 1663, 1585, 2259, 1579, 1483, 1485, 936, 748, 936, 1716, 1024,
        1024, 1382, 1466, 1214, 1466, 1389, 891, 1466, 1458, 702, 702, 1362, 702, 2134, 1458, 1407,
        1466, 1466, 1010, 1219, 979, 1458, 1335, 1892, 1321, 1335, 1192, 1458, 748, 1458, 1716,
    ],
];

/// Advance widths of U+00A0 to U+00FF, sixteen a row; same source.
#[rustfmt::skip]
const LATIN_1: [[u16; 96]; 2] = [
    [
        651, 821, 1303, 1303, 1303, 1303, 690, 1024, 1024, 2048, 965, 1253, 1716, 739, 2048, 1024,
        1024, 1716, 821, 821, 1024, 1303, 1303, 651, 1024, 821, 965, 1253, 1985, 1985, 1985, 1087,
        1401, 1401, 1401, 1401, 1401, 1401, 1995, 1430, 1294, 1294, 1294, 1294, 604, 604, 604, 604,
        1587, 1532, 1612, 1612, 1612, 1612, 1612, 1716, 1612, 1499, 1499, 1499, 1499, 1251, 1239, 1290,
        1255, 1255, 1255, 1255, 1255, 1255, 2011, 1126, 1260, 1260, 1260, 1260, 569, 569, 569, 569,
        1253, 1298, 1253, 1253, 1253, 1253, 1253, 1716, 1253, 1298, 1298, 1298, 1298, 1212, 1300, 1212,
    ],
    [
        713, 934, 1425, 1425, 1303, 1425, 748, 1024, 1024, 2048, 1155, 1323, 1716, 850, 2048, 1024,
        1024, 1716, 897, 897, 1024, 1507, 1303, 778, 1024, 897, 1155, 1323, 2120, 2120, 2120, 1188,
        1585, 1585, 1585, 1585, 1585, 1585, 2222, 1503, 1399, 1399, 1399, 1399, 762, 762, 762, 762,
        1716, 1714, 1741, 1741, 1741, 1741, 1741, 1716, 1741, 1663, 1663, 1663, 1663, 1483, 1511, 1473,
        1382, 1382, 1382, 1382, 1382, 1382, 2146, 1214, 1389, 1389, 1389, 1389, 702, 702, 702, 702,
        1407, 1458, 1407, 1407, 1407, 1407, 1407, 1716, 1407, 1458, 1458, 1458, 1458, 1335, 1466, 1335,
    ],
];

/// Signs of the trade beyond Latin 1: the sign, its width, its width in bold; same source.
#[rustfmt::skip]
const SIGNS: [(char, u16, u16); 25] = [
    ('–', 1024, 1024), ('—', 2048, 2048), ('‘', 651, 778), ('’', 651, 778), ('“', 1061, 1346), ('”', 1061, 1346),
    ('•', 1208, 1309), ('…', 2048, 2048), ('′', 465, 540), ('″', 765, 915),
    ('←', 1716, 1716), ('↑', 1716, 1716), ('→', 1716, 1716), ('↓', 1716, 1716),
    ('−', 1716, 1716), ('≈', 1716, 1716), ('≠', 1716, 1716), ('≤', 1716, 1716), ('≥', 1716, 1716), ('⌀', 1233, 1233),
    ('⅛', 1985, 2120), ('⅜', 1985, 2120), ('⅝', 1985, 2120), ('⅞', 1985, 2120), ('□', 1935, 1935),
];

/// A letter beyond the tables counts as wide as the em: wider than nearly all of them.
const OTHER: u16 = 2048;

fn advance(letter: char, bold: bool) -> u16 {
    let face = usize::from(bold);
    let code = u32::from(letter);
    let from_table = |table: &[u16], first: u32| code.checked_sub(first).and_then(|at| table.get(at as usize)).copied();
    ASCII
        .get(face)
        .and_then(|table| from_table(table, 0x20))
        .or_else(|| LATIN_1.get(face).and_then(|table| from_table(table, 0xa0)))
        .or_else(|| SIGNS.iter().find(|sign| sign.0 == letter).map(|sign| if bold { sign.2 } else { sign.1 }))
        .unwrap_or(OTHER)
}

/// The length of a line of words, without kerning.
pub fn width(words: &str, size: TextSize, bold: bool) -> Micrometres {
    let units: i128 = words.chars().map(|letter| i128::from(advance(letter, bold))).sum();
    // 25 400 µm are 720 tenths of a point. A text has far fewer than 2^40 letters.
    i64::try_from(round_half_even(units * i128::from(size.tenths()) * 25_400, UNITS * 720)).unwrap_or(i64::MAX)
}

/// The words broken at spaces into lines of at most that length; a longer word is broken between letters. A no-break space
/// (U+00A0) is a letter like others.
pub fn wrap(words: &str, size: TextSize, bold: bool, room: Micrometres) -> Vec<String> {
    let mut lines = Vec::new();
    for paragraph in words.split('\n') {
        let mut line = String::new();
        for word in paragraph.split(' ').filter(|word| !word.is_empty()) {
            let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
            if width(&longer, size, bold) <= room {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            line = break_word(word, size, bold, room, &mut lines);
        }
        lines.push(line);
    }
    lines
}

/// Puts full lines of an overlong word into `lines`; the answer is the rest of the word.
fn break_word(word: &str, size: TextSize, bold: bool, room: Micrometres, lines: &mut Vec<String>) -> String {
    let mut line = String::new();
    for letter in word.chars() {
        line.push(letter);
        if width(&line, size, bold) > room && line.chars().nth(1).is_some() {
            line.pop();
            lines.push(std::mem::replace(&mut line, letter.to_string()));
        }
    }
    line
}

/// The largest size from `size` down to [`TextSize::LEAST`] at which the words fit; at the least size they are cut, with
/// an ellipsis, where they still do not.
pub fn fit(words: &str, size: TextSize, bold: bool, room: Micrometres) -> (String, TextSize) {
    let mut size = size;
    while size > TextSize::LEAST && width(words, size, bold) > room {
        size = size.smaller();
    }
    let mut kept = words.to_owned();
    while width(&kept, size, bold) > room && !kept.is_empty() {
        kept = kept.trim_end_matches('…').to_owned();
        kept.pop();
        kept = format!("{}…", kept.trim_end());
        if kept == "…" {
            break;
        }
    }
    (kept, size)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_no_longer_than_its_room() {
        let words =
            "The boards are laid from the bow edge, and supercalifragilisticexpialidocious stays whole where it can.";
        for room in [8_000, 20_000, 45_000] {
            let lines = wrap(words, TextSize::BODY, false, room);
            assert!(lines.iter().all(|line| width(line, TextSize::BODY, false) <= room), "{lines:?}");
            let letters = |text: &str| text.chars().filter(|letter| !letter.is_whitespace()).collect::<String>();
            assert_eq!(letters(&lines.concat()), letters(words));
        }
    }

    #[test]
    fn what_does_not_fit_is_made_smaller_and_then_cut() {
        let (kept, size) = fit("Bennington 2275", TextSize::TITLE, true, 40_000);
        assert_eq!(kept, "Bennington 2275");
        assert!(size < TextSize::TITLE && size >= TextSize::LEAST);
        let (cut, size) = fit("Bennington 2275", TextSize::TITLE, true, 15_000);
        assert!(cut.ends_with('…') && size == TextSize::LEAST && width(&cut, size, true) <= 15_000, "{cut}");
    }

    /// The tables, and the rise and fall of the letters, against the font itself.
    #[cfg(feature = "packet")]
    #[test]
    fn the_tables_are_those_of_the_font() {
        let fonts = [(dejavu::sans::regular(), false), (dejavu::sans::bold(), true)];
        for (data, bold) in fonts {
            let face = ttf_parser::Face::parse(data, 0).unwrap();
            assert_eq!(i128::from(face.units_per_em()), UNITS);
            let letters = (' '..='~').chain('\u{a0}'..='ÿ').chain(SIGNS.iter().map(|sign| sign.0));
            for letter in letters {
                let glyph = face.glyph_index(letter).unwrap();
                assert_eq!(face.glyph_hor_advance(glyph), Some(advance(letter, bold)), "{letter:?}, bold {bold}");
            }
        }
    }
}
