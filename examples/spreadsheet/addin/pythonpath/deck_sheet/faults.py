"""What is wrong, in the words of the sheet: which cell or row, and what would be accepted."""

import re

_MISSING = re.compile(r'^"[a-z_]+" is required\. It has no default\.$')


_SAID_OTHERWISE = {
    'No cross members are given. Give "members", one by one, or "regular" with first, last and spacing.': (
        "No cross members are given. Type in their stations, or the first, the last and the regular spacing."
    ),
}


def told(form, refused=()):
    """The sheet's own faults and the library's, each once, as pairs of a place and a sentence."""
    found = list(form.faults) + [(place(form, pointer), sentence(text)) for pointer, text in refused]
    return list(dict.fromkeys(found))


def line(fault):
    where, said = fault
    return f"{where}: {said}" if where else said


def place(form, pointer):
    """Where on the sheet the field stands, or the nearest thing around it."""
    while pointer:
        if pointer in form.places:
            return form.places[pointer]
        pointer = pointer.rpartition("/")[0]
    return ""


def sentence(text):
    """The library's sentence, where it speaks of the job file in words of the sheet."""
    if _MISSING.match(text):
        return "Missing. Measure it and type it in."
    return _SAID_OTHERWISE.get(text, text)
