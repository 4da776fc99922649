"""The maker's own browser, opened at the pages."""

from __future__ import annotations

import os
import sys
from threading import Thread

_WINDOWS_OF_THEIR_OWN = ("darwin", "win32")
"""Systems whose browsers never run within a terminal."""

_SHOWN_BY = ("DISPLAY", "WAYLAND_DISPLAY", "BROWSER")
"""Variables of which elsewhere one says that there are windows, or which browser is wanted."""


def show_in_browser(address: str) -> None:
    """Have the user's browser open an address, where there is one; nobody waits for it.

    Without windows none is asked: one that runs in the terminal would take it from the program.
    """
    if sys.platform in _WINDOWS_OF_THEIR_OWN or any(map(os.environ.get, _SHOWN_BY)):
        Thread(target=_open, args=(address,), daemon=True, name="browser").start()


def _open(address: str) -> None:
    import webbrowser  # looks for browsers as it is used, which takes its time

    try:
        webbrowser.open(address)
    except (webbrowser.Error, OSError):
        return  # the address is in the terminal
