//! A file that no target names is silently not run: every Rust file of the test, bench and example folders is a target
//! or a module of one.

use super::{root, rust_files, shown, text};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// The folders whose manifests list their targets.
const FOLDERS: [&str; 3] = ["tests", "benches", "examples"];

/// The `path = "…"` of a manifest's targets.
fn targets(manifest: &Path) -> Vec<PathBuf> {
    let folder = manifest.parent().unwrap();
    let text = text(manifest);
    let paths = text.lines().filter_map(|line| line.strip_prefix("path = \"")?.strip_suffix('"'));
    paths.map(|path| folder.join(path)).collect()
}

/// The files of the modules that a file declares.
fn modules(file: &Path) -> Vec<PathBuf> {
    let name = file.file_stem().unwrap().to_string_lossy().into_owned();
    let folder = file.parent().unwrap();
    let is_root =
        ["main", "lib", "mod"].contains(&name.as_str()) || targets(&package(file)).contains(&file.to_path_buf());
    let folder = if is_root { folder.to_path_buf() } else { folder.join(name) };
    let mut path: Option<String> = None;
    let mut found = Vec::new();
    for line in text(file).lines().map(str::trim) {
        if let Some(given) = line.strip_prefix("#[path = \"") {
            path = given.split('"').next().map(str::to_owned);
            continue;
        }
        let declared = line.strip_prefix("pub(crate) ").or(line.strip_prefix("pub ")).unwrap_or(line);
        if let Some(module) = declared.strip_prefix("mod ").and_then(|rest| rest.strip_suffix(';')) {
            let beside = [folder.join(format!("{module}.rs")), folder.join(module).join("mod.rs")];
            found.extend(match path.take() {
                Some(given) => Some(file.parent().unwrap().join(given)),
                None => beside.into_iter().find(|file| file.exists()),
            });
        }
    }
    found
}

/// The manifest of the package that a file is of.
fn package(file: &Path) -> PathBuf {
    let mut folders = file.ancestors().skip(1).map(|folder| folder.join("Cargo.toml"));
    folders.find(|manifest| manifest.exists()).unwrap()
}

#[test]
fn every_file_is_a_target_or_a_module_of_one() {
    let mut looked_at = 0;
    for folder in FOLDERS.map(|folder| root().join(folder)).into_iter().filter(|folder| folder.exists()) {
        let mut known: BTreeSet<PathBuf> = BTreeSet::new();
        let mut open = targets(&folder.join("Cargo.toml"));
        while let Some(file) = open.pop() {
            assert!(file.exists(), "{} is listed and not there", shown(&file));
            if known.insert(file.clone()) {
                open.extend(modules(&file));
            }
        }
        for file in rust_files(&folder) {
            looked_at += 1;
            assert!(known.contains(&file), "{} is listed nowhere: it would not be run", shown(&file));
        }
    }
    assert!(looked_at > 20, "only {looked_at} files found");
}

/// Every golden job and every golden call has its expected text.
#[test]
fn golden_files_come_in_pairs() {
    let stems = |folder: &str| -> BTreeSet<String> {
        let files = std::fs::read_dir(root().join("tests/golden").join(folder)).unwrap();
        let name = |file: std::fs::DirEntry| file.file_name().to_string_lossy().split('.').next().map(str::to_owned);
        files.filter_map(|file| name(file.unwrap())).collect()
    };
    let asked: BTreeSet<String> = stems("jobs").union(&stems("calls")).cloned().collect();
    assert_eq!(asked, stems("expected"));
}
