"""Babel's words for days, loaded whatever the time zone of the computer is said to be."""

from __future__ import annotations

import os

# Babel looks the zone up when it is loaded, though no time of day is ever told here, and fails
# where TZ names a folder or a file that is none.
_zone = os.environ.pop("TZ", None)
try:
    from babel.dates import format_date as format_date
finally:
    if _zone is not None:
        os.environ["TZ"] = _zone
