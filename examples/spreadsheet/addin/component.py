"""The add-in's functions as the spreadsheet sees them: a method for each name of `functions.py`."""

import uno  # noqa: F401  (makes the types of the office importable)
import unohelper
from com.sun.star.lang import XServiceInfo
from org.deck.sheet import XDeckFunctions

from deck_sheet import answers

IMPLEMENTATION = "org.deck.sheet.DeckFunctions"
SERVICES = ("org.deck.sheet.DeckFunctions", "com.sun.star.sheet.AddIn")


class DeckFunctions(unohelper.Base, XDeckFunctions, XServiceInfo):
    """Hands ranges to `answers` and its rows back; nothing is worked out here."""

    def __init__(self, context, *arguments):
        self.context = context

    def seams(self, *ranges):
        return answers.of_plan("seams", ranges)

    def panels(self, *ranges):
        return answers.of_plan("panels", ranges)

    def sheets(self, *ranges):
        return answers.of_plan("sheets", ranges)

    def fasteners(self, *ranges):
        return answers.of_plan("fasteners", ranges)

    def costs(self, *ranges):
        return answers.of_plan("costs", ranges)

    def strength(self, *ranges):
        return answers.of_plan("strength", ranges)

    def cautions(self, *ranges):
        return answers.of_plan("cautions", ranges)

    def assumed(self, *ranges):
        return answers.of_plan("assumed", ranges)

    def messages(self, *ranges):
        return answers.messages(ranges)

    def fact(self, name, *ranges):
        return answers.fact(name, ranges)

    def spanLimit(self, *arguments):
        return answers.span_limit(*arguments)

    def length(self, length, unit):
        return answers.length(length, unit)

    def fraction(self, length, unit, finest, feet):
        return answers.fraction(length, unit, finest, feet)

    def nest(self, *arguments):
        return answers.nest(*arguments)

    def version(self):
        return answers.version()

    def getImplementationName(self):
        return IMPLEMENTATION

    def supportsService(self, name):
        return name in SERVICES

    def getSupportedServiceNames(self):
        return SERVICES


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(DeckFunctions, IMPLEMENTATION, SERVICES)
