"""How long a quote takes beside a fixed loop in plain Python, and how that grows with the rows.

Run as `python tests/benchmarks/estimate.py` with the project on the path. Everything is timed in
one run, so that the ratios depend on the machine as little as may be: a quote of 30 rows against
the loop, then the time for a row at 30, 300 and 3,000 rows, which should stay about the same.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from quoting.core.order.order import Order
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop, section

ROUNDS = 7
LOOPS = 100_000
ROWS = (30, 300, 3_000)
COLOURS = ("teal", "rust", "oat")


def striped(rows: int) -> Order:
    """Make an order of so many single-row stripes in three colours, by exact repeats."""
    stripes = section(*COLOURS, repeats=rows // len(COLOURS))
    return sample_order(design=sample_design(first_rows=(), sections=(stripes,)))


def yardstick() -> int:
    """Run a loop of whole-number arithmetic that never changes."""
    total = 0
    for number in range(LOOPS):
        total = (total * 31 + number) % 1_000_003
    return total


def seconds(work: Callable[[], object], rounds: int = ROUNDS) -> float:
    """Return the least time of several, which the machine's other work disturbs least."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def quote_seconds(order: Order, workshop: Workshop) -> float:
    """Return the least time that a whole quote takes."""
    return seconds(lambda: sample_quote(order, workshop))


def main() -> None:
    """Print both ratios."""
    workshop = sample_workshop()
    loop_s = seconds(yardstick)
    times_s = [quote_seconds(striped(rows), workshop) for rows in ROWS]
    print(f"{'loop of 100,000':>16}: {loop_s * 1000:9.2f} ms")
    for rows, quote_s in zip(ROWS, times_s, strict=True):
        a_row = (quote_s / rows) / (times_s[0] / ROWS[0])
        print(
            f"{rows:>11,} rows: {quote_s * 1000:9.2f} ms, {quote_s / loop_s:8.3f} loops, "
            f"a row {a_row:6.3f} times that of {ROWS[0]} rows"
        )


if __name__ == "__main__":
    main()
