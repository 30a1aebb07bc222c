"""The deck library, called through its C border."""

import ctypes
import json
import pathlib

from . import built

_OK = 0
_NUL_TERMINATED = -1

Buffer = ctypes.c_char_p
Needed = ctypes.POINTER(ctypes.c_size_t)


class Stale(Exception):
    """The library beside the add-in is not the one that the add-in was built for."""


class Refused(Exception):
    """What the library found wrong: pairs of a JSON pointer and a sentence."""

    def __init__(self, faults):
        super().__init__("; ".join(sentence for _, sentence in faults))
        self.faults = faults


class Library:
    """One loaded library."""

    def __init__(self, path, abi=built.ABI):
        self._c = ctypes.CDLL(str(path))
        found = self._c.deck_abi_version()
        if found != abi:
            raise Stale(
                f"The library in the add-in has border number {found} and the add-in needs {abi}: "
                "build the add-in again and install it."
            )

    def ask(self, function, request):
        """The answer of a function that takes a request and gives one, both as plain data."""
        call = getattr(self._c, "deck_" + function)
        text = json.dumps(request).encode()
        answer = self._text(lambda *out: call(text, ctypes.c_int64(len(text)), *out))
        return json.loads(answer)

    def job_schema(self):
        """The JSON Schema of a job, as text."""
        return self._text(self._c.deck_job_schema)

    def plan(self, job):
        """The plan of a job's text; the handle is freed when the plan is."""
        handle = ctypes.c_void_p()
        text = job.encode()
        status = self._c.deck_plan_new(text, ctypes.c_int64(len(text)), ctypes.byref(handle))
        if status != _OK:
            raise Refused(self._faults())
        return Plan(self, handle)

    def _text(self, call):
        needed = ctypes.c_size_t()
        call(None, ctypes.c_size_t(0), ctypes.byref(needed))
        room = ctypes.create_string_buffer(max(needed.value, 1))
        if call(room, ctypes.c_size_t(len(room)), ctypes.byref(needed)) != _OK:
            raise Refused(self._faults())
        return room.value.decode()

    def _faults(self):
        """What is wrong, the sentences without the pointers that they begin with."""
        found = []
        for index in range(self._c.deck_last_error_count()):
            pointer = self._of_error("pointer", index)
            sentence = self._of_error("at", index)
            found.append((pointer, sentence.removeprefix(pointer).removeprefix(": ")))
        return found or [("", "The library gave no reason.")]

    def _of_error(self, what, index):
        call = getattr(self._c, "deck_last_error_" + what)
        needed = ctypes.c_size_t()
        call(ctypes.c_int32(index), None, ctypes.c_size_t(0), ctypes.byref(needed))
        room = ctypes.create_string_buffer(max(needed.value, 1))
        call(ctypes.c_int32(index), room, ctypes.c_size_t(len(room)), ctypes.byref(needed))
        return room.value.decode()


class Plan:
    """A plan of the library's."""

    def __init__(self, library, handle):
        self._library, self._handle = library, handle
        self._facts = None

    def __del__(self):
        self._library._c.deck_plan_free(self._handle)

    @property
    def facts(self):
        """The plan's document as plain data."""
        if self._facts is None:
            self._facts = json.loads(self.json())
        return self._facts

    def json(self):
        """The plan's document, byte for byte as the library writes it."""
        call = self._library._c.deck_plan_json
        return self._library._text(lambda *out: call(self._handle, *out))

    def svg(self, view):
        """A drawing."""
        call = self._library._c.deck_plan_svg
        return self._library._text(lambda *out: call(self._handle, view.encode(), *out))

    def write_packet(self, path):
        """Writes the job packet, a PDF."""
        if self._library._c.deck_plan_packet(self._handle, str(path).encode()) != _OK:
            raise Refused(self._library._faults())


def beside_the_add_in():
    """The library that lies in the add-in."""
    return Library(pathlib.Path(__file__).resolve().parents[2] / built.LIBRARY)
