"""What to know before acting on a plan."""

from typing import Literal

from .._record import Record


class Caution(Record):
    """Something to know before acting on a plan."""

    _says = ("id", "source", "text")
    _columns = ("text", "about", "reason", "defers_to")

    id: str
    source: Literal["standing", "plan"]
    """Whether it holds for every strip-out, or this plan triggered it."""
    about: tuple[str, ...]
    """What triggered it."""
    text: str
    reason: str
    defers_to: str
    """Whose rule goes before."""
