"""What the buttons of the quoting workbook do. A button's address is `org.deck.sheet:` and the name of what it does."""

import uno  # noqa: F401  (makes the types of the office importable)
import unohelper
from com.sun.star.frame import XDispatch, XDispatchProvider
from com.sun.star.lang import XInitialization, XServiceInfo

from deck_sheet import drawing

IMPLEMENTATION = "org.deck.sheet.Buttons"
SERVICES = ("com.sun.star.frame.ProtocolHandler",)
PROTOCOL = "org.deck.sheet:"
ACTIONS = {"draw": drawing.draw, "values": drawing.save_values}


class Buttons(unohelper.Base, XInitialization, XDispatchProvider, XDispatch, XServiceInfo):
    """Sends a button's address to what it names, with the workbook in which it was pressed."""

    def __init__(self, context, *arguments):
        self.context = context
        self.frame = None

    def initialize(self, arguments):
        self.frame = arguments[0] if arguments else None

    def queryDispatch(self, url, target, flags):
        return self if url.Complete.removeprefix(PROTOCOL) in ACTIONS else None

    def queryDispatches(self, requests):
        return tuple(self.queryDispatch(one.FeatureURL, one.FrameName, one.SearchFlags) for one in requests)

    def dispatch(self, url, arguments):
        action = ACTIONS[url.Complete.removeprefix(PROTOCOL)]
        action(self.context, self.frame.getController().getModel())

    def addStatusListener(self, listener, url):
        """A button has no state to be told of."""

    def removeStatusListener(self, listener, url):
        """A button has no state to be told of."""

    def getImplementationName(self):
        return IMPLEMENTATION

    def supportsService(self, name):
        return name in SERVICES

    def getSupportedServiceNames(self):
        return SERVICES


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(Buttons, IMPLEMENTATION, SERVICES)
