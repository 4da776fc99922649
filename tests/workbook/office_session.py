# mypy: ignore-errors
"""LibreOffice without a window, for scripts run by the Python that has its `uno` module."""

import os
import subprocess
import time
from contextlib import contextmanager
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

SECONDS, PAUSE = 60, 0.2
HIDDEN = PropertyValue("Hidden", 0, True, 0)  # noqa: FBT003 - a name, a number, a value, a state


@contextmanager
def desktop_of(office, folder):
    """Start an office with a profile in a folder, yield its desktop, and end it."""
    pipe = f"pipe,name=sheets{os.getpid()}"
    process = subprocess.Popen(
        [
            office,
            f"-env:UserInstallation={(Path(folder) / 'profile').as_uri()}",
            "--headless",
            "--norestore",
            f"--accept={pipe};urp;",
        ],
        stdout=subprocess.DEVNULL,
    )
    try:
        desktop = reached(pipe)
        yield desktop
        desktop.terminate()
        process.wait(SECONDS)
    finally:
        process.kill()


def reached(pipe):
    """Return the desktop of the office, once it answers."""
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext(
        "com.sun.star.bridge.UnoUrlResolver", local
    )
    until = time.monotonic() + SECONDS
    while True:
        try:
            context = resolver.resolve(f"uno:{pipe};urp;StarOffice.ComponentContext")
            manager = context.ServiceManager
            return manager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
        except NoConnectException:
            if time.monotonic() > until:
                raise
            time.sleep(PAUSE)


def opened(desktop, path):
    """Return a workbook that nobody sees."""
    return desktop.loadComponentFromURL(Path(path).as_uri(), "_blank", 0, (HIDDEN,))


def stored(book, path):
    """Save a workbook as one of Excel's, and close it."""
    kind = PropertyValue("FilterName", 0, "Calc MS Excel 2007 XML", 0)
    book.storeToURL(Path(path).as_uri(), (kind,))
    book.close(True)  # noqa: FBT003 - its own word for it


def type_in(cell, value):
    """Type a number or a word into a cell, or empty it."""
    if value is None:
        cell.Formula = ""
    elif isinstance(value, str):
        cell.String = value
    else:
        cell.Value = value
