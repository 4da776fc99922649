"""The whole count that is nearest to a length, where stitches come in repeats."""

from __future__ import annotations

from quoting.core.ground.money import round_count


def nearest_multiple(target: float, multiple: int, plus: int) -> int:
    """Return the multiple·k + plus, k at least 1, nearest to `target`; of two, the larger."""
    repeats = round_count(max(0.0, (target - plus) / multiple))
    return multiple * max(1, repeats) + plus
