"""What a blanket is made of, counted: its rows, its rounds, or its motifs."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.plan.passes import Plan
from quoting.wording.rows_and_edges import body_heading
from quoting.wording.speech import Speech


def made_of(plan: Plan, speech: Speech) -> Iterator[tuple[str, str]]:
    """Yield each count with its heading: `Motifs`, `20: 4 across, 5 down`; `Rounds`, `13`."""
    grid = plan.grid
    if grid is None:
        yield body_heading(plan), speech.number(len(plan.rows))
        return
    across, down = speech.number(grid.columns), speech.number(grid.rows)
    yield "Motifs", f"{speech.number(grid.count)}: {across} across, {down} down"
