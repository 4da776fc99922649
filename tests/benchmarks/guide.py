"""How long a working guide takes beside its quote, and how that grows with the rows.

Run as `python tests/benchmarks/guide.py` with the project on the path. Everything is timed in one
run: a guide of regular stripes, which fold, and of ever other colours, which do not, against the
quote that it is made from, then the time for a row, which should stay about the same.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).parents[2]))

from quoting.core.guide.guide import guide_of
from quoting.core.quote.quote import Quote
from quoting.wording.guide import guide_paper
from tests.examples import COLOURS, sample_design, sample_order, sample_quote, section

ROUNDS = 5
ROWS = (30, 300, 480)


def regular(rows: int) -> Quote:
    """Quote single-row stripes in three colours."""
    stripes = section("teal", "rust", "oat", repeats=rows // 3)
    return sample_quote(sample_order(design=sample_design(first_rows=(), sections=(stripes,))))


def random_colours(rows: int) -> Quote:
    """Quote single-row stripes in colours drawn from a seed."""
    random = Random(rows)
    stripes = section(*(random.choice(list(COLOURS)) for _ in range(rows)), repeats=1)
    return sample_quote(sample_order(design=sample_design(first_rows=(), sections=(stripes,))))


def seconds(work: Callable[[], object]) -> float:
    """Return the least time of several, which the machine's other work disturbs least."""
    times = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def main() -> None:
    """Print the time of a guide, in itself and for a row."""
    for name, quoted in (("regular", regular), ("random", random_colours)):
        first = 0.0
        for rows in ROWS:
            quote = quoted(rows)
            guide_s = seconds(partial(guide_of, quote))
            paper_s = seconds(partial(guide_paper, quote))
            first = first or guide_s / rows
            print(
                f"{name:>8}, {rows:>4} rows: folded in {guide_s * 1000:7.2f} ms, "
                f"a row {guide_s / rows / first:5.2f} times that of {ROWS[0]} rows; "
                f"in words {paper_s * 1000:7.2f} ms"
            )


if __name__ == "__main__":
    main()
