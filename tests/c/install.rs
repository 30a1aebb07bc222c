//! `deck-ffi/install.sh` into folders of the test's own, and programs that find everything through pkg-config.

use crate::compile::{WARNINGS, built, printed, root};
use crate::example::{jobs, order};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A fresh folder under the target folder.
fn fresh(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn output(command: &mut Command) -> Output {
    command.output().unwrap_or_else(|error| panic!("{command:?} cannot be run: {error}"))
}

fn install(options: &[String], destination: Option<&Path>) -> Output {
    let mut command = Command::new("bash");
    command.arg(root().join("deck-ffi/install.sh")).arg(format!("--built={}", built().display())).args(options);
    if let Some(folder) = destination {
        command.env("DESTDIR", folder);
    }
    output(&mut command)
}

/// Installs below a prefix.
fn installed(prefix: &Path, option: &str) {
    let mut options = vec![format!("--prefix={}", prefix.display())];
    options.extend((!option.is_empty()).then(|| option.to_owned()));
    printed(&install(&options, None));
}

/// What pkg-config says of the module in a prefix.
fn flags(prefix: &Path, options: &[&str]) -> Vec<String> {
    let mut command = Command::new("pkg-config");
    command.args(options).arg("deck").env("PKG_CONFIG_PATH", prefix.join("lib/pkgconfig"));
    printed(&output(&mut command)).split_whitespace().map(str::to_owned).collect()
}

/// Compiles a program with those flags, as a user does.
fn compile(compiler: &[&str], source: &str, program: &Path, flags: &[String]) {
    let mut command = Command::new(compiler[0]);
    command.args(&compiler[1..]).args(WARNINGS).arg(root().join(source)).arg("-o").arg(program).args(flags);
    let output = output(&mut command);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
}

/// The libraries that a program or library asks the loader for, and its own name.
fn dynamic(file: &Path) -> String {
    printed(&output(Command::new("readelf").arg("-d").arg(file)))
}

const PROGRAMS: [(&[&str], &str); 2] =
    [(&["cc", "-std=c99"], "examples/c/plan.c"), (&["c++", "-std=c++17"], "examples/cpp/nest.cpp")];

#[test]
fn a_shared_library_is_installed_and_found() {
    let prefix = fresh("prefix");
    installed(&prefix, "");
    let name = format!("libdeck_ffi.so.{}", deck_ffi::DECK_ABI_VERSION);
    assert!(dynamic(&prefix.join("lib").join(&name)).contains(&format!("soname: [{name}]")));
    let flags = flags(&prefix, &["--cflags", "--libs"]);
    for (compiler, source) in PROGRAMS {
        let program = prefix.join(Path::new(source).file_stem().unwrap());
        compile(compiler, source, &program, &flags);
        assert!(dynamic(&program).contains(&format!("Shared library: [{name}]")));
        runs(&program, &prefix, true);
    }
}

#[test]
fn a_static_library_is_installed_and_found() {
    let prefix = fresh("prefix_static");
    installed(&prefix, "--disable-shared");
    assert!(!prefix.join("lib/libdeck_ffi.so").exists());
    let flags = flags(&prefix, &["--cflags", "--libs", "--static"]);
    for (compiler, source) in PROGRAMS {
        let program = prefix.join(Path::new(source).file_stem().unwrap());
        compile(compiler, source, &program, &flags);
        assert!(!dynamic(&program).contains("libdeck_ffi"));
        runs(&program, &prefix, false);
    }
}

/// The program does its work with the library in the prefix, under valgrind as well where that is asked for.
fn runs(program: &Path, prefix: &Path, check: bool) {
    let (job, plan) = &jobs()[0];
    let is_plan = program.ends_with("plan");
    let arguments = if is_plan { vec![job.as_str()] } else { vec!["1/8", "4"] };
    let mut plain = Command::new(program);
    let mut checker = Command::new("valgrind");
    checker.args(["--quiet", "--leak-check=full", "--show-leak-kinds=all", "--errors-for-leak-kinds=all"]);
    checker.arg("--error-exitcode=99").arg(program);
    let check = check && std::env::var_os("DECK_NO_VALGRIND").is_none();
    for command in [Some(&mut plain), check.then_some(&mut checker)].into_iter().flatten() {
        command.args(&arguments).env("LD_LIBRARY_PATH", prefix.join("lib"));
        let printed = printed(&output(command));
        if is_plan {
            assert_eq!(printed, order(plan));
        } else {
            assert!(printed.contains("\"sheet_count\": 2"), "{printed}");
        }
    }
}

/// Nothing but the functions of the header can be seen from outside.
#[test]
fn the_shared_library_shows_the_header_s_functions_and_no_more() {
    let prefix = fresh("prefix_symbols");
    installed(&prefix, "--disable-static");
    assert!(!prefix.join("lib/libdeck_ffi.a").exists());
    let header = fs::read_to_string(prefix.join("include/deck.h")).unwrap();
    let declared = header.lines().filter_map(|line| Some(line.strip_prefix("int32_t ")?.split_once('(')?.0.to_owned()));
    let mut declared: Vec<String> = declared.collect();
    declared.sort();
    let library = prefix.join("lib/libdeck_ffi.so");
    let symbols = printed(&output(Command::new("nm").args(["-D", "--defined-only"]).arg(library)));
    let mut shown: Vec<String> = symbols.lines().map(|line| line.rsplit(' ').next().unwrap().to_owned()).collect();
    shown.sort();
    assert_eq!(shown, declared);
}

#[test]
fn a_package_is_put_below_destdir_and_named_without_it() {
    let stage = fresh("stage");
    let options = ["--prefix=/opt/deck", "--libdir=/opt/deck/lib64", "--disable-static"].map(str::to_owned);
    printed(&install(&options, Some(&stage)));
    let pc = fs::read_to_string(stage.join("opt/deck/lib64/pkgconfig/deck.pc")).unwrap();
    assert!(pc.contains("prefix=/opt/deck\nlibdir=/opt/deck/lib64\nincludedir=/opt/deck/include\n"), "{pc}");
    assert!(pc.contains(&format!("Version: {}\n", env!("CARGO_PKG_VERSION"))) && !pc.contains('@'), "{pc}");
    assert!(stage.join("opt/deck/include/deck.hpp").exists() && stage.join("opt/deck/lib64/libdeck_ffi.so").exists());
}

#[test]
fn what_it_cannot_do_it_says() {
    for option in ["--prefx=/tmp", "--prefix=here", "--prefix=/with space"] {
        let output = install(&[option.to_owned()], None);
        assert_eq!(output.status.code(), Some(2), "{option}");
        assert!(!output.stderr.is_empty());
    }
}
