"""Plans a new plywood deck for a pontoon boat."""

from ._call import FillProgress, Progress, fill, nest
from ._deck import (
    Beam,
    Fastening,
    Fill,
    Nest,
    Outline,
    Panel,
    Plan,
    Plate,
    Quote,
    SeamLayout,
    Survey,
    __version__,
    job_schema,
    plan,
)
from ._error import DeckError, Fault
from ._steps import SeamLayouts, fasteners, panels, seams
from ._strength import beam, plate, span_limits
from ._study import Study, StudyProgress, study
from ._summary import summary
from ._survey import survey
from ._variants import Variant, Variants, variants

__all__ = [
    "Beam",
    "DeckError",
    "Fastening",
    "Fault",
    "Fill",
    "FillProgress",
    "Nest",
    "Outline",
    "Panel",
    "Plan",
    "Plate",
    "Progress",
    "Quote",
    "SeamLayout",
    "SeamLayouts",
    "Study",
    "StudyProgress",
    "Survey",
    "Variant",
    "Variants",
    "__version__",
    "beam",
    "fasteners",
    "fill",
    "job_schema",
    "nest",
    "panels",
    "plan",
    "plate",
    "seams",
    "span_limits",
    "study",
    "summary",
    "survey",
    "variants",
]
