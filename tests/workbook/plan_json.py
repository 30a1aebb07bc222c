"""Prints the plan of a job file as the Python package gives it."""

import sys

import deck_py

sys.stdout.buffer.write(deck_py.plan(sys.argv[1]).to_json().encode())
