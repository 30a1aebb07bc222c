#!/usr/bin/env python3
"""Builds the spreadsheet add-in, a `deck.oxt` with the library inside.

    cargo build --release -p deck-ffi
    python3 examples/spreadsheet/build_addin.py --library target/release/libdeck_ffi.so --out target/spreadsheet/deck.oxt

Needs the type compiler of the office's developer package (Debian: libreoffice-dev).
"""

import argparse
import pathlib
import re
import subprocess
import sys
import tempfile
import zipfile
from xml.sax.saxutils import escape, quoteattr

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parents[1]
ADDIN = HERE / "addin"
sys.path.insert(0, str(ADDIN))

from functions import FUNCTIONS  # noqa: E402

SERVICE = "org.deck.sheet.DeckFunctions"
TYPE_COMPILERS = ("/usr/lib/libreoffice/sdk/bin/unoidl-write", "/opt/libreoffice/sdk/bin/unoidl-write")
TYPES = ("/usr/lib/libreoffice/program/types.rdb", "/usr/lib/libreoffice/program/types/offapi.rdb")
# A fixed time in the package, so that the same sources give the same bytes.
TIME = (2026, 1, 1, 0, 0, 0)

MANIFEST = {
    "DeckFunctions.rdb": "application/vnd.sun.star.uno-typelibrary;type=RDB",
    "deck.components": "application/vnd.sun.star.uno-components",
    "CalcAddIns.xcu": "application/vnd.sun.star.configuration-data",
    "ProtocolHandler.xcu": "application/vnd.sun.star.configuration-data",
}


def idl():
    """The interface of the functions, in the office's own language for types."""
    methods = []
    for function in FUNCTIONS:
        arguments = ", ".join(f"[in] any {argument.name}" for argument in function.arguments)
        result = "sequence< sequence<any> >" if function.block else "any"
        methods.append(f"    {result} {function.method}({arguments});")
    body = "\n".join(methods)
    return (
        "module org { module deck { module sheet {\n"
        f"interface XDeckFunctions {{\n{body}\n}};\n"
        "service DeckFunctions : XDeckFunctions;\n"
        "}; }; };\n"
    )


def prop(name, text):
    return f'<prop oor:name="{name}"><value xml:lang="en">{escape(text)}</value></prop>'


def wizard():
    """What the function wizard shows of each function and its arguments."""
    nodes = []
    for function in FUNCTIONS:
        arguments = "".join(
            f'<node oor:name={quoteattr(argument.name)} oor:op="replace">'
            f"{prop('DisplayName', argument.label)}{prop('Description', argument.about)}</node>"
            for argument in function.arguments
        )
        nodes.append(
            f'<node oor:name="{function.method}" oor:op="replace">{prop("DisplayName", function.name)}'
            f"{prop('Description', function.about)}"
            '<prop oor:name="Category"><value>Add-In</value></prop>'
            f"{prop('CompatibilityName', function.name)}"
            f'<node oor:name="Parameters">{arguments}</node></node>'
        )
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<oor:component-data xmlns:oor="http://openoffice.org/2001/registry" '
        'xmlns:xs="http://www.w3.org/2001/XMLSchema" oor:name="CalcAddIns" oor:package="org.openoffice.Office">'
        f'<node oor:name="AddInInfo"><node oor:name="{SERVICE}" oor:op="replace"><node oor:name="AddInFunctions">'
        + "".join(nodes)
        + "</node></node></node></oor:component-data>\n"
    )


def manifest():
    entries = "".join(
        f'<manifest:file-entry manifest:full-path="{name}" manifest:media-type="{kind}"/>' for name, kind in MANIFEST.items()
    )
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<manifest:manifest xmlns:manifest="http://openoffice.org/2001/manifest">{entries}</manifest:manifest>\n'
    )


def found(pattern, path):
    match = re.search(pattern, (ROOT / path).read_text(), re.MULTILINE)
    if match is None:
        raise SystemExit(f"{path} does not say {pattern}")
    return match.group(1)


def built(library):
    """What the add-in knows of the library that it was built with."""
    abi = found(r"^#define DECK_ABI_VERSION (\d+)", "deck-ffi/include/deck.h")
    version = found(r'^version = "([^"]+)"', "Cargo.toml")
    return f'"""Written by build_addin.py."""\n\nABI = {abi}\nVERSION = "{version}"\nLIBRARY = "{library.name}"\n'


def type_library():
    """The compiled interface."""
    compiler = next((path for path in TYPE_COMPILERS if pathlib.Path(path).exists()), None)
    if compiler is None:
        raise SystemExit(f"No type compiler at {' or '.join(TYPE_COMPILERS)}: install libreoffice-dev.")
    with tempfile.TemporaryDirectory() as folder:
        source, result = pathlib.Path(folder) / "DeckFunctions.idl", pathlib.Path(folder) / "DeckFunctions.rdb"
        source.write_text(idl())
        subprocess.run([compiler, *TYPES, source, result], check=True)
        return result.read_bytes()


def package(library):
    """The files of the package."""
    files = {path.relative_to(ADDIN).as_posix(): path.read_bytes() for path in sorted(ADDIN.rglob("*.*")) if kept(path)}
    files["META-INF/manifest.xml"] = manifest().encode()
    files["CalcAddIns.xcu"] = wizard().encode()
    files["DeckFunctions.rdb"] = type_library()
    version = found(r'^version = "([^"]+)"', "Cargo.toml")
    files["description.xml"] = files["description.xml"].replace(b"VERSION", version.encode())
    files["pythonpath/deck_sheet/built.py"] = built(library).encode()
    files[library.name] = library.read_bytes()
    return files


def kept(path):
    return "__pycache__" not in path.parts and path.name not in ("functions.py", "built.py")


def write(library, out):
    """Writes the package."""
    out.parent.mkdir(parents=True, exist_ok=True)
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as package_file:
        for name, content in sorted(package(library).items()):
            package_file.writestr(zipfile.ZipInfo(name, TIME), content, zipfile.ZIP_DEFLATED)


def main():
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--library", type=pathlib.Path, default=ROOT / "target/release/libdeck_ffi.so")
    asked.add_argument("--out", type=pathlib.Path, default=ROOT / "target/spreadsheet/deck.oxt")
    arguments = asked.parse_args()
    if not arguments.library.exists():
        raise SystemExit(f"{arguments.library} is not there: cargo build --release -p deck-ffi")
    write(arguments.library.resolve(), arguments.out)
    print(arguments.out)


if __name__ == "__main__":
    main()
