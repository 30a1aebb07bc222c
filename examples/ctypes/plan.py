"""Plans the deck of a job file through the C library, with nothing but Python itself, and prints what to order.

    cargo build --release -p deck-ffi
    python3 examples/ctypes/plan.py examples/jobs/plain-20.json [path/to/libdeck_ffi.so]

For more than this, `deck_py` is the Python module; it needs a build of its own.
"""

import ctypes
import pathlib
import sys
from ctypes import POINTER, byref, c_char_p, c_double, c_int32, c_int64, c_size_t, c_void_p

ABI_VERSION, OK, SHORT_BUFFER = 1, 0, 3
NAMES = {"win32": "deck_ffi.dll", "darwin": "libdeck_ffi.dylib"}
TARGET = pathlib.Path(__file__).parents[2] / "target/release"


def load(path):
    """The library, each function with the types of its arguments as in deck.h."""
    library = ctypes.CDLL(str(path))
    buffer = [c_char_p, c_size_t, POINTER(c_size_t)]
    for name, arguments in {
        "deck_abi_version": [],
        "deck_plan_new": [c_char_p, c_int64, POINTER(c_void_p)],
        "deck_plan_free": [c_void_p],
        "deck_plan_number": [c_void_p, c_char_p, POINTER(c_double)],
        "deck_plan_count": [c_void_p, c_char_p, POINTER(c_size_t)],
        "deck_plan_text": [c_void_p, c_char_p, *buffer],
        "deck_last_error_count": [],
        "deck_last_error_at": [c_int32, *buffer],
    }.items():
        function = getattr(library, name)
        function.argtypes, function.restype = arguments, c_int32
    if library.deck_abi_version() != ABI_VERSION:
        sys.exit(f"{path} is of another version")
    return library


class DeckError(Exception):
    """A call that failed: every fault, one a line."""


def written(call):
    """What a function writes: asked once for the size, once for the text. Returns the status and the text."""
    needed = c_size_t()
    status = call(None, 0, byref(needed))
    if status != SHORT_BUFFER:
        return status, ""
    buffer = ctypes.create_string_buffer(needed.value)
    status = call(buffer, needed, byref(needed))
    return status, buffer.value.decode()


class Plan:
    """The plan of a job, freed at the end of `with`."""

    def __init__(self, library, job):
        self.library, self.handle = library, c_void_p()
        self.check(library.deck_plan_new(job, len(job), byref(self.handle)))

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.library.deck_plan_free(self.handle)
        self.handle = c_void_p()

    def check(self, status):
        if status != OK:
            at, count = self.library.deck_last_error_at, self.library.deck_last_error_count()
            faults = [written(lambda *buffer: at(index, *buffer))[1] for index in range(count)]
            raise DeckError("\n".join(faults))

    def number(self, pointer):
        value = c_double()
        self.check(self.library.deck_plan_number(self.handle, pointer.encode(), byref(value)))
        return value.value

    def count(self, pointer):
        value = c_size_t()
        self.check(self.library.deck_plan_count(self.handle, pointer.encode(), byref(value)))
        return value.value

    def text(self, pointer):
        status, text = written(lambda *buffer: self.library.deck_plan_text(self.handle, pointer.encode(), *buffer))
        self.check(status)
        return text


def print_order(plan):
    if plan.count("/panels") == 0:
        print("no layout:", plan.text("/no_layout/reason"))
        return
    for index in range(plan.count("/takeoff/lines")):
        line = f"/takeoff/lines/{index}"
        buy, unit, what = plan.number(f"{line}/buy"), plan.text(f"{line}/unit"), plan.text(f"{line}/description")
        print(f"{buy:4.0f} {unit:<8} {what}")


def main(job, library=TARGET / NAMES.get(sys.platform, "libdeck_ffi.so")):
    try:
        with Plan(load(library), pathlib.Path(job).read_bytes()) as plan:
            print_order(plan)
    except DeckError as error:
        sys.exit(str(error))


if __name__ == "__main__":
    if len(sys.argv) not in (2, 3):
        sys.exit(__doc__)
    main(*sys.argv[1:])
