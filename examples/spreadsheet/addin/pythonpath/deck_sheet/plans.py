"""Plans by the text of their job, so that all formulas about one boat plan it once."""

import functools
from collections import OrderedDict

from . import cells, faults, job, library

MOST = 8


class NotPlanned(Exception):
    """There is no plan: what is wrong or missing, as pairs of a place and a sentence."""

    def __init__(self, found):
        super().__init__("; ".join(map(faults.line, found)))
        self.faults = found


class Plans:
    """The plans that were asked for last. What is wrong with a job is kept as a plan is."""

    def __init__(self, deck):
        self._deck = deck
        self._kept = OrderedDict()
        self.planned = 0

    def of(self, form):
        """The plan of a form."""
        text = form.text
        if text not in self._kept:
            self._kept[text] = self._made(text)
            self.planned += 1
        self._kept.move_to_end(text)
        while len(self._kept) > MOST:
            self._kept.popitem(last=False)
        plan, refused = self._kept[text]
        found = faults.told(form, refused)
        if found:
            raise NotPlanned(found)
        return plan

    def _made(self, text):
        try:
            return self._deck.plan(text), ()
        except library.Refused as refused:
            return None, refused.faults


class Desk:
    """What the functions of the add-in work with: the library, and the plans that it made."""

    def __init__(self, deck):
        self.deck = deck
        self._plans = Plans(deck)
        self._form = functools.lru_cache(MOST)(self._read)

    @property
    def planned(self):
        """How many plans were made, for those who count."""
        return self._plans.planned

    def plan(self, ranges):
        """The plan of a job's ranges, as a spreadsheet hands them over. The same cells are read once."""
        return self._plans.of(self._form(tuple(ranges)))

    @staticmethod
    def _read(ranges):
        return job.form(*map(cells.grid, ranges))
