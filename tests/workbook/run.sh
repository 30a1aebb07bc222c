#!/usr/bin/env bash
# Builds the add-in and the quoting workbook, and tests both in a real headless office. Installs the office by apt where
# it is not there. `tests/workbook/run.sh speed` measures instead. Other arguments go to pytest.
set -euo pipefail
cd "$(dirname "$0")/../.."

target="${CARGO_TARGET_DIR:-target}"
built="$(realpath -m "${DECK_WORKBOOK:-target/spreadsheet}")"
# The office's own Python: any other lacks its module.
python=/usr/bin/python3

install_office() {
    local missing=()
    command -v soffice >/dev/null || missing+=(libreoffice-calc)
    "$python" -c 'import uno' 2>/dev/null || missing+=(python3-uno libreoffice-script-provider-python)
    [ -x /usr/lib/libreoffice/sdk/bin/unoidl-write ] || missing+=(libreoffice-dev)
    "$python" -c 'import pytest' 2>/dev/null || missing+=(python3-pytest)
    command -v pdftotext >/dev/null || missing+=(poppler-utils)
    if [ ${#missing[@]} -gt 0 ]; then
        local sudo=""
        [ "$(id -u)" = 0 ] || sudo=sudo
        $sudo apt-get update -qq
        $sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"
    fi
}

build() {
    cargo build --locked --release -p deck-ffi
    mkdir -p "$built"
    "$python" examples/spreadsheet/build_addin.py --library "$target/release/libdeck_ffi.so" --out "$built/deck.oxt"
    "$python" examples/spreadsheet/build_workbook.py --addin "$built/deck.oxt" --out "$built/quote.ods"
}

# The same jobs through Rust, C and Python, to be compared with the cells.
build_other_ways() {
    cargo build --locked --release -p deck-examples --example redeck
    local job name library
    for job in examples/jobs/*.json; do
        name="$(basename "$job" .json)"
        "$target/release/examples/redeck" "$job" --out "$built/rust/$name" >/dev/null
    done
    library="$(realpath "$target/release")"
    cc -std=c99 -Wall -Wextra -Wpedantic -Werror tests/workbook/plan_json.c -Ideck-ffi/include -L"$library" -ldeck_ffi \
        -Wl,-rpath,"$library" -o "$built/plan_json"
    # The package as the Python tests install it; it is built where they did not run before.
    local tested=("${DECK_VENVS:-$target/venvs}"/*/bin/python)
    DECK_PYTHON="${DECK_PYTHON:-${tested[0]}}"
    if ! "$DECK_PYTHON" -c 'import deck_py' 2>/dev/null; then
        DECK_PYTHON="$built/venv/bin/python"
        [ -x "$DECK_PYTHON" ] || python3 -m venv "$built/venv"
        "$DECK_PYTHON" -m pip install --quiet --disable-pip-version-check --force-reinstall ./deck-py
    fi
    export DECK_PYTHON
}

install_office
export DECK_WORKBOOK="$built"
build
if [ "${1:-}" = speed ]; then
    exec "$python" tests/workbook/speed.py
fi
build_other_ways
exec "$python" -m pytest -p no:cacheprovider tests/workbook "$@"
