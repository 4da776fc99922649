"""What comparing sizes and looking for calmer stripes takes, in quotes of one order.

Run as `python -m tests.benchmarks.comparison`. A comparison of six sizes should take about as long
as six quotes; calmer stripes as long as some twenty. Only ratios are printed as findings: they do
not depend on the machine much.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from functools import partial

from quoting.core.order.resizing import Size, resize_order
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.calmer_stripes import calmer_stripes
from quoting.core.weighing.comparison import compare_sizes
from tests.examples import (
    COLOURS,
    TODAY,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    section,
)

RUNS = 9
SIZES = tuple(
    Size(width_cm=width, height_cm=height)
    for width, height in ((60, 75), (70, 90), (80, 100), (90, 120), (120, 150), (150, 200))
)
STRIPES = {
    "two colours, row by row": section("oat", "teal"),
    "four colours, row by row": section("oat", "teal", "rust", "plum"),
    "six colours, row by row": section(*COLOURS),
    "six colours, four rows": section(*COLOURS, rows=4),
    "a repeat of 60 rows": section(*("oat", "teal", "rust", "plum", "moss") * 6, rows=2),
}


def seconds(work: Callable[[], object]) -> float:
    """Return the median time that some work takes."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def compare() -> None:
    """Print a comparison's time over that of its sizes quoted one by one."""
    order, workshop = sample_order(), sample_workshop()

    def alone() -> None:
        for size in SIZES:
            quote_order(resize_order(order, size), workshop, today=TODAY)

    together_s = seconds(lambda: compare_sizes(order, workshop, SIZES, today=TODAY))
    alone_s = seconds(alone)
    print(f"six sizes: {together_s * 1000:7.1f} ms, {together_s / alone_s:5.2f} × six quotes")


def calm() -> None:
    """Print the time of looking for calmer stripes over that of the quote it starts from."""
    for name, stripes in STRIPES.items():
        order = sample_order(design=sample_design(sections=(stripes,)))
        quote = sample_quote(order)
        quote_s = seconds(partial(sample_quote, order))
        calm_s = seconds(partial(calmer_stripes, quote, today=TODAY))
        ends = [one.quote.estimate.ends for one in calmer_stripes(quote, today=TODAY)]
        print(
            f"{name:>26}: {calm_s * 1000:7.1f} ms, {calm_s / quote_s:5.1f} × one quote, "
            f"ends {quote.estimate.ends} to {ends}"
        )


def main() -> None:
    """Print both."""
    compare()
    calm()


if __name__ == "__main__":
    main()
