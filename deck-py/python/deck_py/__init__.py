"""Plans a new plywood deck for a pontoon boat."""

from ._call import Progress, nest
from ._deck import Nest, Outline, Panel, Plan, __version__, job_schema, plan
from ._error import DeckError, Fault

__all__ = [
    "DeckError",
    "Fault",
    "Nest",
    "Outline",
    "Panel",
    "Plan",
    "Progress",
    "__version__",
    "job_schema",
    "nest",
    "plan",
]
