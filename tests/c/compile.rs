//! Builds programs against `deck.h` and the library beside this test, and runs them, with and without valgrind.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// Set where valgrind cannot be had; without it a missing valgrind is a failure.
const NO_VALGRIND: &str = "DECK_NO_VALGRIND";

/// What valgrind exits with where it finds a fault: none of the programs does.
const FAULTY: &str = "99";

/// What the static library leaves to the system, as `rustc --print native-static-libs` tells it for Linux.
const SYSTEM: [&str; 6] = ["-lgcc_s", "-lutil", "-lrt", "-lpthread", "-lm", "-ldl"];

/// The root of the workspace.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_path_buf()
}

/// What every program is compiled with.
pub(crate) const WARNINGS: [&str; 4] = ["-Wall", "-Wextra", "-Wpedantic", "-Werror"];

/// Cargo puts the C libraries of a dependency beside the test that depends on it.
pub(crate) fn built() -> PathBuf {
    std::env::current_exe().unwrap().parent().unwrap().to_path_buf()
}

/// How the library is linked.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Link {
    Shared,
    Static,
}

/// Compiles `source` (from the root) with warnings as errors, and returns the program.
///
/// Each caller names a program of its own, as tests run side by side.
pub(crate) fn compile(source: &str, name: &str, link: Link) -> PathBuf {
    let (compiler, standard) = if is_cpp(source) { ("c++", "-std=c++17") } else { ("cc", "-std=c99") };
    compile_with(&[compiler, standard], source, name, link)
}

pub(crate) fn is_cpp(source: &str) -> bool {
    Path::new(source).extension().is_some_and(|extension| extension == "cpp")
}

/// The same with a compiler and its flags of the caller's choice.
pub(crate) fn compile_with(compiler: &[&str], source: &str, name: &str, link: Link) -> PathBuf {
    let program = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let mut command = Command::new(compiler[0]);
    command.args(&compiler[1..]).args(WARNINGS).args(["-g", "-pthread", "-I"]);
    command.arg(root().join("deck-ffi/include")).arg(root().join(source)).arg("-o").arg(&program);
    match link {
        Link::Shared => {
            command.arg("-L").arg(built()).arg("-ldeck_ffi").arg(format!("-Wl,-rpath,{}", built().display()))
        }
        Link::Static => command.arg(built().join("libdeck_ffi.a")).args(SYSTEM),
    };
    let output = command.output().unwrap_or_else(|error| panic!("{} cannot be run: {error}", compiler[0]));
    assert!(output.status.success(), "{source}:\n{}", String::from_utf8_lossy(&output.stderr));
    program
}

/// Cargo's own search path names its output folder first, where an older library may lie.
fn on_the_library_beside(command: &mut Command) -> &mut Command {
    command.env("LD_LIBRARY_PATH", built())
}

/// Runs a program at the root and returns what it printed, whatever its exit status.
pub(crate) fn run(program: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::new(program);
    on_the_library_beside(&mut command).args(arguments).current_dir(root()).output().unwrap()
}

/// Runs a program under valgrind: no error and nothing left unfreed. Returns its output; `None` where there is to be no
/// valgrind.
pub(crate) fn checked(program: &Path, arguments: &[&str]) -> Option<Output> {
    if std::env::var_os(NO_VALGRIND).is_some() {
        return None;
    }
    let mut command = Command::new("valgrind");
    on_the_library_beside(&mut command);
    command.args(["--quiet", "--leak-check=full", "--show-leak-kinds=all", "--errors-for-leak-kinds=all"]);
    command.arg(format!("--error-exitcode={FAULTY}")).arg(program).args(arguments).current_dir(root());
    let output = command
        .output()
        .unwrap_or_else(|error| panic!("valgrind cannot be run ({error}): install it, or set {NO_VALGRIND}"));
    let faulty = output.status.code().is_none_or(|code| code.to_string() == FAULTY);
    assert!(!faulty, "{}:\n{}", program.display(), String::from_utf8_lossy(&output.stderr));
    Some(output)
}

/// Runs a program plainly and under valgrind, demands the same of both, and returns what it printed.
pub(crate) fn run_both(program: &Path, arguments: &[&str]) -> Output {
    let output = run(program, arguments);
    if let Some(checked) = checked(program, arguments) {
        assert_eq!(checked.stdout, output.stdout, "{} prints otherwise under valgrind", program.display());
        assert_eq!(checked.status.code(), output.status.code());
    }
    output
}

/// What a program printed; it must have ended well.
pub(crate) fn printed(output: &Output) -> String {
    assert!(output.status.success(), "{:?}:\n{}", output.status, String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout.clone()).unwrap()
}
