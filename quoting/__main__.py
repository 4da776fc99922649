"""The program as it is started: `quoting`, or `python -m quoting`."""

from __future__ import annotations

import signal
import sys
from types import FrameType

INTERRUPTED = 1

ENDINGS = ("SIGTERM", "SIGHUP")
"""Signals that ask the program to end; not every system has both."""


def start() -> int:
    """Run the command line and return its exit status, quietly also when interrupted early."""
    try:
        _end_as_by_ctrl_c()
        from quoting.cli import main

        return main()
    except KeyboardInterrupt:
        return INTERRUPTED


def _end_as_by_ctrl_c() -> None:
    """Let the program tidy up after itself, whoever ends it; what is ignored stays ignored."""
    for name in ENDINGS:
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) is signal.SIG_DFL:
            signal.signal(number, _interrupt)


def _interrupt(number: int, frame: FrameType | None) -> None:
    del number, frame
    raise KeyboardInterrupt


if __name__ == "__main__":
    sys.exit(start())
