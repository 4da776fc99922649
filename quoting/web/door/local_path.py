"""Where to go on after the door: only to a page of this program."""

from __future__ import annotations

import re

_LOCAL = re.compile(r"/(?!/)[^\x00-\x20\x7f\\]*")
"""Two strokes, of either kind, would begin another computer's name; what is no sign is skipped."""


def local_path(asked: str) -> str:
    """Return a path that was asked for, with its query; the first page for what is none."""
    return asked if _LOCAL.fullmatch(asked) else "/"
