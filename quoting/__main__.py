"""The program as it is started: `quoting`, or `python -m quoting`."""

from __future__ import annotations

import sys

INTERRUPTED = 1


def start() -> int:
    """Run the command line and return its exit status, quietly also when interrupted early."""
    try:
        from quoting.cli import main

        return main()
    except KeyboardInterrupt:
        return INTERRUPTED


if __name__ == "__main__":
    sys.exit(start())
