#!/usr/bin/env bash
# Passes every test of the project. Installs what it needs: on Debian and its kin with apt, and Python tools into a
# virtual environment under target/. Each step can be run alone: `bash tests/run.sh rust c`.
set -euo pipefail
cd "$(dirname "$0")/.."

steps=("$@")
[ ${#steps[@]} -gt 0 ] || steps=(tools format lint rust examples c fuzz python workbook)

say() { printf '\n== %s\n' "$1"; }

step_tools() {
    # A compiler for C and C++, valgrind, pkg-config, Python, and what turns drawings into pictures for a look at them.
    local missing=()
    command -v cc >/dev/null && command -v c++ >/dev/null || missing+=(build-essential)
    command -v valgrind >/dev/null || missing+=(valgrind)
    command -v pkg-config >/dev/null || missing+=(pkg-config)
    command -v python3 >/dev/null && python3 -c 'import venv, ensurepip' 2>/dev/null || missing+=(python3 python3-venv)
    if [ ${#missing[@]} -gt 0 ]; then
        if ! command -v apt-get >/dev/null; then
            echo "Please install: ${missing[*]} (this script only knows apt-get)" >&2
            exit 1
        fi
        local sudo=""
        [ "$(id -u)" = 0 ] || sudo=sudo
        $sudo apt-get update -qq
        $sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"
    fi
    if ! command -v cargo >/dev/null; then
        echo "Please install Rust (https://rustup.rs), then run this again." >&2
        exit 1
    fi
}

step_format() { cargo fmt --all --check; }
step_lint() {
    cargo clippy --workspace --all-targets --locked -- -D warnings
    # The library without its features, as an embedder may build it.
    cargo clippy -p deck-core --no-default-features --locked -- -D warnings
    RUSTDOCFLAGS="-D warnings" cargo doc -p deck-core -p deck-ffi --no-deps --locked
}
step_rust() {
    cargo test --locked -p deck-core -p deck-tests -p deck-examples
    cargo bench --locked -p deck-benches --no-run
}
step_examples() {
    local out
    out=$(mktemp -d)
    for job in examples/jobs/*.json; do
        cargo run --locked --quiet --release --example redeck -- "$job" --out "$out/$(basename "$job" .json)" >"$out/log.txt"
        test -s "$out/$(basename "$job" .json)/packet.pdf"
    done
    cargo run --locked --quiet --release --example plan -- examples/jobs/plain-20.json
    rm -rf "$out"
}
step_c() { cargo build --locked -p deck-ffi && cargo test --locked -p deck-ffi; }
# A short run; the sanitisers need nightly Rust, which is not asked of everybody.
step_fuzz() {
    if cargo +nightly --version >/dev/null 2>&1; then
        bash deck-ffi/fuzz/run.sh "${DECK_FUZZ_SECONDS:-45}" -verbosity=0
    else
        echo "no nightly Rust: the fuzzer is left out"
    fi
}
step_python() { bash tests/python/run.sh; }
step_workbook() { bash tests/workbook/run.sh; }

for step in "${steps[@]}"; do
    say "$step"
    "step_$step"
done
say "all steps passed: ${steps[*]}"
