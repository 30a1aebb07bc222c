"""From a frame to fasteners, step by step, each asked with what the one before returned: python steps.py"""

import deck_py

outline = {"length": "19' 6\"", "beam": 96, "bow": {"radius": 12}}
stations = [1, "23-1/2", 47, 70, "93-1/2", 117, 140, "163-1/2", 187, 210, 233]
frame = {"measured_to": "centre", "flange": 2, "members": [{"station": station} for station in stations]}
hatch = {"name": "hatch", "rectangle": {"x": 60, "y": 30, "depth": 20, "width": 24}}
ply = {"label": "3/4 ply 4 x 8", "length": 96, "width": 48}

layouts = deck_py.seams(frame, None, ply, outline=outline, openings=[hatch], gap="1/8", best=2)
if layouts.no_layout:
    raise SystemExit(layouts.no_layout.reason)
for layout in layouts:
    print(layout)
panels = deck_py.panels(outline, layouts[0], openings=[hatch], thickness="3/4")
for panel in panels:
    print(f"{panel.label}: {panel.length} x {panel.width} in, {panel.weight_lb} lb, {len(panel.openings)} openings")
print(deck_py.fasteners(panels, frame, outline=outline))
