"""Serves the demo's book as it is on one day, so that its pages say the same whenever it is served.

Its options are those of `quoting serve`.
"""

import sys
from datetime import datetime

import time_machine

DAY = datetime.fromisoformat("2026-11-24T09:30:00+00:00")

if __name__ == "__main__":
    with time_machine.travel(DAY, tick=True):
        from quoting.cli import main

        sys.exit(main(["serve", "--demo", "--no-browser", *sys.argv[1:]]))
