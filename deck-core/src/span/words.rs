//! Which published word was meant.

use crate::error::{Fault, Kind};

/// A fault for a word that is not published here, naming the nearest one, or all of them.
pub(super) fn unknown(what: &str, given: &str, known: &[&str]) -> Fault {
    let message = format!("\"{}\" is no {what} that is published here.", short(given));
    let near = nearest(given, known).map(|word| format!("Did you mean \"{word}\"? ")).unwrap_or_default();
    let listed: Vec<String> = known.iter().map(|word| format!("\"{word}\"")).collect();
    Fault::new(Kind::UnknownWord, short(given), message, format!("{near}Published: {}.", listed.join(", ")))
}

/// No word of ours is longer by far; a message does not repeat a whole book.
fn short(given: &str) -> String {
    given.chars().take(60).collect()
}

/// The known word that is fewest slips of the pen away, a swap of neighbours counting as one; none where it is another.
fn nearest<'k>(given: &str, known: &[&'k str]) -> Option<&'k str> {
    let plain = short(given).to_lowercase();
    let slips = |word: &str| strsim::osa_distance(&plain, &word.to_lowercase());
    let near = known.iter().map(|word| (slips(word), *word)).min()?;
    (near.0 <= plain.chars().count() / 3).then_some(near.1)
}
