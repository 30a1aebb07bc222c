#!/bin/sh
# Builds the bench of the nest, runs it and the side-by-side run, and prints every table as markdown.
#
#   benches/run.sh [--full] [--effort WORD] [SECTION ...]
#
# Sections: classes furniture demand feasible several fill growth peers. Without --full a sample that takes under three
# minutes on one idle core, building apart. Growth is always measured at quick. DECK_PACKING_DATA names the folder of the published instances.
set -eu

root=$(cd "$(dirname "$0")/.." && pwd)
target=${CARGO_TARGET_DIR:-$root/target}
data=${DECK_PACKING_DATA:-$root/../shared/data/packing}
all="classes furniture demand feasible several fill growth peers"

full=no effort=standard sections=
while [ $# -gt 0 ]; do
    case $1 in
        --full) full=yes ;;
        --effort) effort=${2:?--effort wants a word}; shift ;;
        -*) echo "$1 is no option; --full and --effort are" >&2; exit 2 ;;
        *)
            case " $all " in
                *" $1 "*) sections="$sections $1" ;;
                *) echo "$1 is no section; these are: $all" >&2; exit 2 ;;
            esac ;;
    esac
    shift
done
sections=${sections:-$all}

program() {
    (cd "$root" && cargo bench --quiet --no-run -p deck-benches --bench nest --message-format json) |
        sed -n 's/.*"executable":"\([^"]*\)".*/\1/p' | tail -n 1
}

python() {
    venv=$target/bench-venv
    [ -x "$venv/bin/python" ] || python3 -m venv "$venv" >&2
    "$venv/bin/pip" install --quiet --disable-pip-version-check -r "$root/benches/peers/requirements.txt" >&2
    echo "$venv/bin/python"
}

nest=$(program)
[ -n "$nest" ] || { echo "the bench program was not built" >&2; exit 1; }

for section in $sections; do
    case $section-$full in
        classes-yes) "$nest" classes --data "$data" --effort "$effort" ;;
        classes-no) "$nest" classes --data "$data" --effort "$effort" --every 10 ;;
        fill-no) "$nest" fill --data "$data" --effort "$effort" --turn fixed --every 3 ;;
        growth-yes) "$nest" growth --effort quick ;;
        growth-no) "$nest" growth --effort quick --sizes 100,1000,10000 ;;
        peers-yes) "$(python)" "$root/benches/peers/side_by_side.py" --program "$nest" --data "$data" \
            --effort "$effort" --every 1 --small 7 --limit 120 ;;
        peers-no) "$(python)" "$root/benches/peers/side_by_side.py" --program "$nest" --data "$data" \
            --effort "$effort" ;;
        *) "$nest" "$section" --data "$data" --effort "$effort" ;;
    esac
done
