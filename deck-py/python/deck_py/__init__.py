"""Plans a new plywood deck for a pontoon boat."""

from ._call import FillProgress, Progress, fill, nest
from ._deck import Beam, Fill, Nest, Outline, Panel, Plan, Plate, __version__, job_schema, plan
from ._error import DeckError, Fault
from ._strength import beam, plate, span_limits

__all__ = [
    "Beam",
    "DeckError",
    "Fault",
    "Fill",
    "FillProgress",
    "Nest",
    "Outline",
    "Panel",
    "Plan",
    "Plate",
    "Progress",
    "__version__",
    "beam",
    "fill",
    "job_schema",
    "nest",
    "plan",
    "plate",
    "span_limits",
]
