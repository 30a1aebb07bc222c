"""Plans a new plywood deck for a pontoon boat."""

from ._call import FillProgress, Progress, fill, nest
from ._deck import Beam, Fill, Nest, Outline, Panel, Plan, Plate, __version__, job_schema, plan
from ._error import DeckError, Fault
from ._strength import beam, plate, span_limits
from ._study import Study, StudyProgress, study
from ._summary import summary
from ._variants import Variant, Variants, variants

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
    "Study",
    "StudyProgress",
    "Variant",
    "Variants",
    "__version__",
    "beam",
    "fill",
    "job_schema",
    "nest",
    "plan",
    "plate",
    "span_limits",
    "study",
    "summary",
    "variants",
]
