"""What a quote of joined squares takes, and how that grows with them.

Run as `python -m tests.benchmarks.squares`. Everything is timed in one run, so that the ratios
depend on the machine as little as may be: 400 squares of nine rounds in four layouts against 100,
which should be no more than four times, and against stripes of 150 rows, about three times.
"""

from __future__ import annotations

from functools import partial

from quoting.core.order.order import Order
from tests.benchmarks.estimate import quote_seconds, seconds, striped, yardstick
from tests.examples import sample_workshop
from tests.motif_examples import FIVE, motif_workshop, sample_motif, sample_squares, squares_order

ROUNDS = 9
LAYOUTS = tuple(
    tuple(FIVE[(first + number) % len(FIVE)] for number in range(ROUNDS)) for first in range(4)
)
ACROSS = (10, 20, 40)
ROWS = 150


def squares(across: int) -> Order:
    """Make an order of so many squares by so many, in four layouts."""
    body = sample_squares(*LAYOUTS, columns=across, rows=across)
    return squares_order(body=body, border=())


def main() -> None:
    """Print the times beside a fixed loop, and their ratios."""
    workshop = motif_workshop(sample_motif(rounds=ROUNDS, one_side_cm=25))
    loop_s = seconds(yardstick)
    rows_s = quote_seconds(striped(ROWS), sample_workshop())
    print(f"{'150 rows':>14}: {rows_s * 1000:7.1f} ms, {rows_s / loop_s:5.2f} loops")
    of = partial(quote_seconds, workshop=workshop)
    times_s = {across**2: of(squares(across)) for across in ACROSS}
    for count, quote_s in times_s.items():
        print(
            f"{count:>6,} squares: {quote_s * 1000:7.1f} ms, {quote_s / loop_s:5.2f} loops, "
            f"{quote_s / times_s[100]:5.2f} times 100, {quote_s / rows_s:5.2f} times 150 rows"
        )


if __name__ == "__main__":
    main()
