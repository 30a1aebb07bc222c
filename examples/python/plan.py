"""Plans a deck and prints what to order: python plan.py [job.json]"""

import sys
from pathlib import Path

import deck_py

demo = Path(__file__).parents[1] / "jobs" / "uneven-22.json"
plan = deck_py.plan(sys.argv[1] if len(sys.argv) > 1 else demo)
print(plan)
if plan.no_layout:
    print(plan.no_layout.reason)
for line in plan.takeoff.lines if plan.takeoff else ():
    cost = "" if line.cost is None else f"  {line.cost:.2f}"
    print(f"{line.buy:4} {line.unit:6} {line.description}{cost}")
