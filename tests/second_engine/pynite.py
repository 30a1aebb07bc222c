"""Beams and plates solved by PyNite, a general-purpose finite element library, written as a table for `span.rs`.

    python3 -m venv /tmp/venv && /tmp/venv/bin/pip install PyNiteFEA==3.2.0
    /tmp/venv/bin/python tests/second_engine/pynite.py > tests/second_engine/pynite.csv

The table is kept in the repository, so that the tests need neither Python nor a network. PyNite's rectangular plates are
non-conforming twelve-parameter ones, ours conforming bicubic ones: two formulations of one theory. Its plates bend alike
in every direction (`kx_mod` and `ky_mod` only reach the membrane). An orthotropic plate with H = sqrt(dx dy) is such a
plate in stretched coordinates, free edges included: with s = (dx/dy)**(1/4) put y' = s y and D = dx/s, leave forces as
they are, and take nu = dx nu_y / sqrt(dx dy). So the cases are orthotropic, with Poisson's effect.
Errors of its plates fall with the square of the size: the table holds what follows from meshes of 2 h and h.
"""

from Pynite import FEModel3D

DX, NU = 12000.0, 0.3
STRETCH = 0.8  # dy = dx / 0.8**4
D = DX / STRETCH


def beam(name, spans, overhangs, fixed, uniform, parts, points):
    """`parts`: (from, to, w); `points`: (at, P); all from the left tip."""
    stiffness = 1e5
    model = FEModel3D()
    model.add_material("m", 1.0, 1.0, 0.0, 0.0)
    model.add_section("s", 1e6, stiffness, stiffness, 1.0)
    places = [0.0]
    for length in [overhangs[0], *spans, overhangs[1]]:
        if length > 0:
            places.append(places[-1] + length)
    supports = [overhangs[0]]
    for span in spans:
        supports.append(supports[-1] + span)
    for index, x in enumerate(places):
        model.add_node(f"n{index}", x, 0, 0)
        held = any(abs(x - s) < 1e-9 for s in supports)
        turn = (x == supports[0] and fixed[0]) or (x == supports[-1] and fixed[1])
        model.def_support(f"n{index}", held and x == supports[0], held, True, True, True, turn)
    stretches = list(zip(places, places[1:]))
    for index, (a, b) in enumerate(stretches):
        model.add_member(f"b{index}", f"n{index}", f"n{index + 1}", "m", "s")
        for start, end, w in [(0.0, places[-1], uniform), *parts]:
            lo, hi = max(a, start), min(b, end)
            if hi > lo and w:
                model.add_member_dist_load(f"b{index}", "Fy", -w, -w, lo - a, hi - a)
        for at, force in points:
            if a < at < b:
                model.add_member_pt_load(f"b{index}", "Fy", -force, at - a)
    model.analyze(check_statics=False)
    for index, s in enumerate(supports):
        node = places.index(s)
        print(f"{name},reaction {index},{model.nodes[f'n{node}'].RxnFY['Combo 1']:.9g}")
    for index, (a, b) in enumerate(stretches):
        member = model.members[f"b{index}"]
        for part in (0.25, 0.5, 0.8):
            x = part * (b - a)
            print(f"{name},deflection {a + x:.6g},{-member.deflection('dy', x):.9g}")
            # PyNite's moments are positive where they hog.
            print(f"{name},moment {a + x:.6g},{-member.moment('Mz', x):.9g}")


def plate(h, length, width, lines, clamped, points, pressure, patch, force, looks):
    """One mesh of squares of size `h` before stretching; answers in the order in which they are printed."""
    model = FEModel3D()
    young = 12.0 * D * (1.0 - NU**2)
    model.add_material("m", young, young / (2.0 * (1.0 + NU)), NU, 0.0)
    nx, ny = round(length / h), round(width / h)
    name = lambda i, j: f"n{i}_{j}"
    for i in range(nx + 1):
        for j in range(ny + 1):
            model.add_node(name(i, j), i * h, j * h * STRETCH, 0)
    on_line = {}
    for i in range(nx + 1):
        for j in range(ny + 1):
            x, y = i * h, j * h
            held = (x, y) in points
            for index, (at, start, end) in enumerate(lines):
                if abs(y - at) < 1e-9 and start - 1e-9 <= x <= end + 1e-9:
                    held = True
                    on_line.setdefault(index, []).append(name(i, j))
            edge = clamped and i == 0
            model.def_support(name(i, j), True, True, held or edge, edge, edge, True)
    for i in range(nx):
        for j in range(ny):
            corners = [name(i, j), name(i + 1, j), name(i + 1, j + 1), name(i, j + 1)]
            model.add_plate(f"p{i}_{j}", *corners, 1.0, "m")
            x, y = (i + 0.5) * h, (j + 0.5) * h
            load = pressure
            if patch:
                (px, py), (sx, sy), total = patch
                if abs(x - px) < sx / 2 and abs(y - py) < sy / 2:
                    load += total / (sx * sy)
            if load:
                model.add_plate_surface_pressure(f"p{i}_{j}", load / STRETCH)
    if force:
        (x, y), value = force
        model.add_node_load(name(round(x / h), round(y / h)), "FZ", value)
    model.analyze(check_statics=False, check_stability=False)
    answers = []
    for x, y in looks:
        node = model.nodes[name(round(x / h), round(y / h))]
        answers.append((f"deflection {x:g} {y:g}", node.DZ["Combo 1"]))
    for index in sorted(on_line):
        total = -sum(model.nodes[node].RxnFZ["Combo 1"] for node in on_line[index])
        answers.append((f"reaction {index}", total))
    return answers


def extrapolated(name, h, *args):
    coarse, fine = plate(2 * h, *args), plate(h, *args)
    for (what, a), (_, b) in zip(coarse, fine):
        print(f"{name},{what},{b + (b - a) / 3:.7g}")


print("case,quantity,value")
beam("uneven", [14, 19, 16.5, 22], [5, 7], (0, 0), 1.0, [(20, 43, 2.0)], [(50, 40.0), (2, 15.0), (80, 5.0)])
beam("fixed", [12, 20, 9], [0, 0], (1, 1), 0.5, [(3, 7, 4.0)], [(25, 30.0)])
beam("half fixed", [18, 11], [0, 6], (1, 0), 0.0, [(20, 35, 1.5)], [(6, 22.0), (34, 9.0)])
members = [(0.0, 0.0, 48.0), (10.0, 0.0, 48.0), (24.0, 0.0, 48.0)]
looks = [(24.0, 6.0), (24.0, 16.0), (0.0, 16.0), (48.0, 18.0), (12.0, 4.0)]
extrapolated("members uniform", 0.5, 48.0, 24.0, members, False, [], 0.7, None, None, looks)
extrapolated("members heel", 0.5, 48.0, 24.0, members, False, [], 0.0, ((22.0, 17.0), (4.0, 4.0), 200.0), None, looks)
extrapolated("members edge", 0.5, 48.0, 24.0, members, False, [], 0.0, ((46.0, 17.0), (4.0, 4.0), 200.0), None, looks)
overhang = [(4.0, 0.0, 48.0), (18.0, 0.0, 48.0)]
extrapolated("overhangs", 0.5, 48.0, 24.0, overhang, False, [], 0.0, ((24.0, 22.0), (4.0, 4.0), 100.0), None, [(24.0, 24.0), (0.0, 24.0), (24.0, 0.0), (24.0, 10.0)])
extrapolated("cantilever", 0.5, 48.0, 24.0, [], True, [], 0.05, None, ((48.0, 24.0), 4.0), [(48.0, 0.0), (48.0, 24.0), (24.0, 12.0)])
extrapolated("four screws", 0.5, 48.0, 24.0, [], False, [(4.0, 4.0), (44.0, 4.0), (4.0, 20.0), (44.0, 20.0)], 0.2, None, None, [(24.0, 12.0), (0.0, 0.0), (24.0, 0.0)])
