"""How long is still to wait, in words."""

from __future__ import annotations

MINUTE_S = 60


def wait_words(wait_s: int) -> str:
    """Return when something may be done again: `in 8 seconds`, from a minute on `in 3 minutes`."""
    if wait_s < MINUTE_S:
        return f"in {wait_s} second{'' if wait_s == 1 else 's'}"
    minutes = -(-wait_s // MINUTE_S)
    return f"in {minutes} minute{'' if minutes == 1 else 's'}"
