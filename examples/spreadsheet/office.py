"""A headless office of one's own: started with a fresh profile, reached over a pipe, and stopped again.

Needs the Python that the office was built with (Debian: /usr/bin/python3 with python3-uno).
"""

import os
import pathlib
import shutil
import subprocess
import tempfile
import time
import uuid

import uno
import unohelper
from com.sun.star.beans import NamedValue, PropertyValue
from com.sun.star.task import XInteractionHandler
from com.sun.star.ucb import XCommandEnvironment

START = 120.0
STEP = 0.1


class Quiet(unohelper.Base, XCommandEnvironment, XInteractionHandler):
    """Nobody is asked anything while an extension is installed: every question is answered with yes."""

    def getInteractionHandler(self):
        return self

    def handle(self, request):
        for way_on in request.getContinuations():
            approve = way_on.queryInterface(uno.getTypeByName("com.sun.star.task.XInteractionApprove"))
            if approve is not None:
                approve.select()
                return

    def getProgressHandler(self):
        return None


class Office:
    """A running office. Use it in a `with`."""

    def __init__(self):
        self.profile = pathlib.Path(tempfile.mkdtemp(prefix="deck-office-"))
        self._pipe = "deck" + uuid.uuid4().hex
        self._process = None
        self.context = None

    def __enter__(self):
        try:
            self.start()
        except BaseException:
            self.remove()
            raise
        return self

    def __exit__(self, *problem):
        self.stop()
        self.remove()

    def start(self):
        program = shutil.which("soffice") or "/usr/bin/soffice"
        self._process = subprocess.Popen(
            [
                program,
                f"-env:UserInstallation={self.profile.as_uri()}",
                "--headless",
                "--norestore",
                "--nologo",
                "--nodefault",
                f"--accept=pipe,name={self._pipe};urp;",
            ],
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
        self.context = self._reached()

    def _reached(self):
        local = uno.getComponentContext()
        resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
        address = f"uno:pipe,name={self._pipe};urp;StarOffice.ComponentContext"
        end = time.monotonic() + START
        while True:
            try:
                return resolver.resolve(address)
            except Exception:  # not there yet
                if time.monotonic() > end or self._process.poll() is not None:
                    raise
                time.sleep(STEP)

    def stop(self):
        try:
            self.service("com.sun.star.frame.Desktop").terminate()
        except Exception:  # it closes the pipe while it answers
            pass
        try:
            self._process.wait(30)
        except subprocess.TimeoutExpired:
            os.killpg(self._process.pid, 9)
            self._process.wait()

    def remove(self):
        if self._process is not None and self._process.poll() is None:
            os.killpg(self._process.pid, 9)
            self._process.wait()
        shutil.rmtree(self.profile, ignore_errors=True)

    def service(self, name):
        return self.context.ServiceManager.createInstanceWithContext(name, self.context)

    @property
    def desktop(self):
        return self.service("com.sun.star.frame.Desktop")

    def install(self, package):
        """Installs an extension for this profile, as its user would, and starts anew so that it counts."""
        manager = self.context.getValueByName("/singletons/com.sun.star.deployment.ExtensionManager")
        url = uno.systemPathToFileUrl(str(pathlib.Path(package).resolve()))
        quiet = (NamedValue("SUPPRESS_LICENSE", "1"),)
        manager.addExtension(url, quiet, "user", manager.createAbortChannel(), Quiet())
        self.stop()
        self.start()

    def new(self):
        """A new workbook."""
        return self.desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, (setting("Hidden", True),))

    def open(self, path):
        url = uno.systemPathToFileUrl(str(pathlib.Path(path).resolve()))
        return self.desktop.loadComponentFromURL(url, "_blank", 0, (setting("Hidden", True),))


def save(workbook, path, kind="calc8"):
    """Saves under a path; `kind` is the office's name of the format."""
    workbook.storeToURL(uno.systemPathToFileUrl(str(pathlib.Path(path).resolve())), (setting("FilterName", kind),))


def save_as(workbook, path):
    """Saves under a path, which from then on is where the workbook lies."""
    workbook.storeAsURL(uno.systemPathToFileUrl(str(pathlib.Path(path).resolve())), (setting("FilterName", "calc8"),))


def setting(name, value):
    return PropertyValue(name, 0, value, 0)
