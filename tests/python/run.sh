#!/bin/sh
# Builds the wheel once, and runs the tests on it with python3 and with every newer CPython that is found.
#
#   tests/python/run.sh [ARGUMENTS OF PYTEST]
#
# DECK_PYTHONS names the interpreters in place of those. DECK_VENVS is the folder of their virtual environments, which are
# made where they are not there.
set -eu
cd "$(dirname "$0")/../.."
target="${CARGO_TARGET_DIR:-target}"
venvs="${DECK_VENVS:-$target/venvs}"

# The newer ones by name, or where pyenv keeps them: its stand-ins on the path refuse to run.
newer() {
    for minor in 12 13 14 15; do
        for python in "python3.$minor" "${PYENV_ROOT:-$HOME/.pyenv}"/versions/3.$minor.*/bin/python; do
            if "$python" -c 'import ensurepip, venv' 2>/dev/null; then
                echo "$python"
                break
            fi
        done
    done
}

version() { "$1" -c 'import sys; print("%d.%d" % sys.version_info[:2])'; }

ready() {
    [ -x "$venvs/$1/bin/python" ] || "$2" -m venv "$venvs/$1"
    "$venvs/$1/bin/python" -m pip install --quiet --disable-pip-version-check -r tests/python/requirements.txt
}

wheels="$target/wheels/python"
rm -rf "$wheels"
tested=
for python in ${DECK_PYTHONS:-python3 $(newer)}; do
    version=$(version "$python")
    case " $tested " in *" $version "*) continue ;; esac
    ready "$version" "$python"
    run="$venvs/$version/bin/python"
    [ -n "$tested" ] || "$run" -m maturin build --quiet --release -m deck-py/Cargo.toml -o "$wheels"
    "$run" -m pip install --quiet --disable-pip-version-check --force-reinstall --no-deps "$wheels"/*.whl
    echo "CPython $version"
    "$run" -m pytest tests/python "$@"
    tested="$tested $version"
done
echo "tested on CPython$tested"
