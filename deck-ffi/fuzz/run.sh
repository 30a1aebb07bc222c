#!/usr/bin/env bash
# Fuzzes every function of deck.h under AddressSanitizer, library included: `bash deck-ffi/fuzz/run.sh SECONDS [ARGUMENT…]`
# (of libFuzzer). The flags are those of `cargo fuzz`, which need not be installed; nightly Rust must be.
set -euo pipefail
cd "$(dirname "$0")"
seconds=${1:-60}
[ $# -gt 0 ] && shift
work=${CARGO_TARGET_DIR:-$PWD/target}/fuzz
seeds=$work/seeds corpus=$work/corpus
mkdir -p "$seeds" "$corpus" "$work/found"

# A seed is a function, an exact count with a large buffer, and a text that it understands.
number() { grep -n "^    (\"$1\"," entries.rs | cut -d: -f1; }
first=$(number deck_plan_new)
seed() {
    # Rows of several lines stand behind those with a text: line minus first line is the function's place.
    local place=$(($(number "$1") - first))
    { printf "\\x$(printf %02x "$place")\\x00\\x12"; cat "$2"; } >"$seeds/$1-$(basename "$2")"
}
for file in ../../examples/jobs/*.json ../../tests/golden/jobs/*.json ../../tests/c/programs/*.json; do
    seed deck_plan_new "$file"
    seed deck_plan_new_utf16 "$file"
done
for file in ../../tests/golden/calls/*.json; do
    name=$(basename "$file" .json)
    for function in "deck_$name" "deck_${name}_utf16" "deck_${name}_watched"; do
        if [ -n "$(number "$function")" ]; then seed "$function" "$file"; fi
    done
done
for pointer in /deck/length_text /takeoff/lines/0/description plan; do
    printf %s "$pointer" >"$work/pointer"
    seed deck_plan_text "$work/pointer"
    seed deck_plan_svg "$work/pointer"
done
# The words that a request is made of.
cat "$seeds"/* | grep -aoE '"[A-Za-z_0-9 /.'"'"'-]+"' | sort -u | sed 's/"\(.*\)"/"\\"\1\\""/' >"$work/words"

export RUSTFLAGS="-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4 -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table -Cllvm-args=-sanitizer-coverage-trace-compares --cfg fuzzing -Zsanitizer=address -Ccodegen-units=16"
host=$(rustc -vV | sed -n 's/^host: //p')
cargo +nightly build --locked --release --target "$host" --target-dir "$work/build" -j2
[ "$seconds" = 0 ] || exec "$work/build/$host/release/entries" "$corpus" "$seeds" -max_total_time="$seconds" -timeout=120 -rss_limit_mb=4096 \
    -detect_leaks=0 -max_len=6000 -dict="$work/words" -artifact_prefix="$work/found/" -print_final_stats=1 "$@"
