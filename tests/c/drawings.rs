//! What C draws has the bytes that Rust draws, in UTF-8, by way of UTF-16, and on paper.

use crate::compile::{Link, checked, compile, printed, root, run};
use crate::example::jobs;
use deck_core::{Job, Plan, draw, plan};
use std::fs;
use std::path::{Path, PathBuf};

/// What the program prints: the names of the views, then each view.
fn drawn(plan: &Plan) -> String {
    let names = draw::views(plan);
    let drawings = names.iter().map(|name| draw::svg(plan, name).unwrap() + "\n");
    let drawings: String = drawings.collect();
    format!("{}\n{drawings}", serde_json::to_string(&names).unwrap())
}

/// The packets that the program leaves; older ones are taken away, one of them made longer first.
struct Packets(PathBuf);

impl Packets {
    const NAMES: [&str; 2] = ["narrow\u{2032}.pdf", "wide\u{2032}\u{1f6e5}.pdf"];

    fn new(name: &str) -> Packets {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        fs::create_dir_all(&folder).unwrap();
        Packets(folder)
    }

    /// One is not there before, and one is longer than what replaces it.
    fn prepare(&self, packet: &[u8]) {
        let [absent, longer] = Packets::NAMES.map(|name| self.0.join(name));
        if absent.exists() {
            fs::remove_file(absent).unwrap();
        }
        fs::write(longer, [packet, b"and more"].concat()).unwrap();
    }

    fn are(&self, packet: &[u8]) {
        for name in Packets::NAMES {
            assert!(fs::read(self.0.join(name)).unwrap() == packet, "{name} in {} differs", self.0.display());
        }
    }
}

#[test]
fn drawings_from_c_are_rust_s_byte_for_byte() {
    let program = compile("tests/c/programs/drawings.c", "drawings", Link::Shared);
    let packets = Packets::new("packets");
    let folder = packets.0.to_string_lossy();
    for (path, plan) in &jobs() {
        let packet = draw::packet(plan, plan.basis.paper).unwrap();
        packets.prepare(&packet);
        assert!(printed(&run(&program, &[path, &folder])) == drawn(plan), "{path}");
        packets.are(&packet);
    }
}

/// A job in words that are not ASCII and on the other paper, and nothing left unfreed.
#[test]
fn drawings_under_valgrind() {
    let program = compile("tests/c/programs/drawings.c", "drawings_checked", Link::Shared);
    let packets = Packets::new("packets_checked");
    let folder = packets.0.to_string_lossy();
    let path = root().join("tests/c/programs/accents.json");
    let plan = plan(&Job::from_json(&fs::read_to_string(&path).unwrap()).unwrap()).unwrap();
    let packet = draw::packet(&plan, plan.basis.paper).unwrap();
    assert!(jobs().iter().any(|(_, other)| other.basis.paper != plan.basis.paper));
    let path = path.to_string_lossy();
    packets.prepare(&packet);
    assert!(!drawn(&plan).is_ascii());
    assert_eq!(printed(&run(&program, &[&path, &folder])), drawn(&plan));
    packets.are(&packet);
    packets.prepare(&packet);
    if let Some(output) = checked(&program, &[&path, &folder]) {
        assert_eq!(printed(&output), drawn(&plan));
        packets.are(&packet);
    }
}
