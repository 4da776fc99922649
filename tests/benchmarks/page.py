"""How long the page takes to answer a change, against a bare Flask route in the same run.

Five colours, 300 rows, a border: the answer that follows as one types, and the whole page.
Run with `python tests/benchmarks/page.py`.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

from flask import Flask

sys.path.insert(0, str(Path(__file__).parents[2]))

from quoting.core.order.in_rows import StopAt
from quoting.core.order.order import Order
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_design, sample_order, sample_workshop, section
from tests.web.pages import Page

TIMES = 40
COLOURS = ("teal", "rust", "oat", "plum", "moss")


def long_order() -> Order:
    """Return an order of five colours and 300 rows: 60 stripes of five rows."""
    stripes = section(*COLOURS, rows=5, repeats=12)
    design = sample_design(
        width_cm=150, height_cm=290, first_rows=(), sections=(stripes,), stop_at=StopAt.REPEAT
    )
    return sample_order(design=design)


def milliseconds(call: Callable[[], object]) -> list[float]:
    """Return how long each of several calls took."""
    call()
    times = []
    for _ in range(TIMES):
        begun = time.perf_counter()
        call()
        times.append((time.perf_counter() - begun) * 1000)
    return times


def main() -> None:
    """Print the middle and the slow end of each answer."""
    bare = Flask("bare")
    bare.add_url_rule("/", view_func=lambda: "answer")
    shop = open_shop(sample_workshop(), today=lambda: TODAY).starting_with(long_order())
    client, bare_client = create_app(shop).test_client(), bare.test_client()
    typed = Page(client.get("/").text).typed()
    calls = {
        "bare route": lambda: bare_client.get("/").data,
        "answer": lambda: client.post("/answer", data=typed).data,
        "whole page": lambda: client.post("/", data=typed).data,
        "quote": lambda: client.post("/quote", data=typed).data,
    }
    assert b"300 rows" in client.post("/answer", data=typed).data
    print(f"{'':12}{'median ms':>12}{'95 % ms':>10}")
    for name, call in calls.items():
        times = sorted(milliseconds(call))
        slow = times[int(0.95 * len(times))]
        print(f"{name:12}{statistics.median(times):12.2f}{slow:10.2f}")


if __name__ == "__main__":
    main()
