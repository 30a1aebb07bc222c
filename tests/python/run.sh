#!/bin/sh
# Builds the package, installs it with the test tools into a virtual environment, and runs the tests.
# Arguments go to pytest. DECK_VENV names the environment; it is made where it is not there.
set -eu
cd "$(dirname "$0")/../.."
venv="${DECK_VENV:-target/venv}"
[ -x "$venv/bin/python" ] || python3 -m venv "$venv"
"$venv/bin/python" -m pip install --quiet --disable-pip-version-check -r tests/python/requirements.txt
"$venv/bin/python" -m pip install --quiet --disable-pip-version-check --force-reinstall --no-deps ./deck-py
exec "$venv/bin/python" -m pytest tests/python "$@"
