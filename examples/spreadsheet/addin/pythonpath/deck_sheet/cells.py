"""What a cell holds, as the job file has it.

A cell holds a number, a text, or nothing (an empty text). What cannot be converted goes on as it is: the library says
what is wrong with it, in its own words.
"""

import math

YES = ("yes", "y", "true", "x")
NO = ("no", "n", "false")


def grid(value):
    """A function's argument as rows of cells; nothing for one that is not given."""
    if value is None or value == "":
        return []
    if isinstance(value, tuple):
        return [[plain(cell) for cell in row] if isinstance(row, tuple) else [plain(row)] for row in value]
    return [[plain(value)]]


def plain(cell):
    """A cell with nothing around its text, and whole numbers as such."""
    if cell is None:
        return ""
    if isinstance(cell, str):
        return cell.strip()
    if isinstance(cell, bool):
        return cell
    return int(cell) if float(cell).is_integer() and abs(cell) < 1e15 else float(cell)


def is_empty(cell):
    return cell == ""


def length(cell):
    """Numbers are of the job's unit; texts say theirs, or have none and are of the job's."""
    return cell


def text(cell):
    return cell if isinstance(cell, str) else str(cell)


def word(cell):
    """A word of the job file: as a person types it, with spaces for hyphens and capitals at will."""
    return text(cell).lower().replace(" ", "-")


def profile(cell):
    """Profiles that are named by a letter are written large."""
    said = text(cell)
    return said.upper() if len(said) == 1 else said.lower()


def number(cell):
    """A number, also one that stands in a cell as text."""
    if isinstance(cell, str):
        try:
            value = float(cell)
        except ValueError:
            return cell
        return plain(value) if math.isfinite(value) else cell
    return cell


def yes(cell):
    """Yes or no; a ticked cell arrives as 1."""
    said = text(cell).lower()
    if said in YES or cell == 1:
        return True
    if said in NO or cell == 0:
        return False
    return cell
