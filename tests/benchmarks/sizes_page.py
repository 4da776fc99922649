"""How long the Sizes page takes to compare six sizes, and stripes to be calmed.

Run as `python tests/benchmarks/sizes_page.py` with the project on the path. A bare Flask route is
asked in the same run and the same way, so that the ratio depends little on the machine.
"""

from __future__ import annotations

import re
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from flask import Flask
from flask.testing import FlaskClient

from quoting.core.order.order import Order
from quoting.places import demo_order, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.web import create_app
from quoting.web.orders.order_form import sent_order
from quoting.web.shop import Shop, open_shop
from quoting.web.sizes.size_form import start_sizes
from tests.examples import changed_design

ROUNDS = 9


def demo_shop() -> tuple[Shop, Order]:
    """Return the demo's workshop and order."""
    shop = open_shop(load_workshop(demo_workshop()), today=lambda: date(2026, 11, 25))
    order = load_order(demo_order(), shop.workshop)
    return shop.starting_with(order), order


def bare_client() -> FlaskClient:
    """Return a client of an application with one route that says one word."""
    app = Flask("bare")
    app.add_url_rule("/", view_func=lambda: "word")
    return app.test_client()


def token(client: FlaskClient) -> str:
    """Return the token that the page's form carries."""
    found = re.search(r'name="csrf_token" value="([^"]+)"', client.get("/sizes").text)
    assert found is not None
    return found[1]


def seconds(work: Callable[[], object]) -> float:
    """Return the least time of several, which the machine's other work disturbs least."""
    times = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def six_sizes(order: Order, shop: Shop) -> dict[str, str]:
    """Return what a browser sends of the form as it begins: six sizes."""
    ticks = {f"customary.{number}.take": "yes" for number in range(1, 7)}
    form = start_sizes(shop, order)
    return {"order_file": form.order_file.typed, "asks": "target", **ticks}


def two_colours(order: Order, shop: Shop) -> dict[str, str]:
    """Return what a browser sends of the worktable: two colours in single rows, many ends."""
    (section,) = order.design.body.sections
    fewer = replace(section, stripes=section.stripes[:2])
    loud = replace(order, design=changed_design(order.design, sections=(fewer,)))
    return sent_order(loud, shop).to_dict()


def main() -> None:
    """Print the times and their ratios."""
    shop, order = demo_shop()
    client, bare = create_app(shop).test_client(), bare_client()
    guard = {"csrf_token": token(client)}
    sizes, loud = six_sizes(order, shop) | guard, two_colours(order, shop) | guard
    asked = {
        "six sizes": ("/sizes/answer", sizes, "Side by side"),
        "six in a budget": ("/sizes/answer", sizes | {"budget": "250"}, "to spend"),
        "the whole page": ("/sizes", sizes, "Side by side"),
        "many ends": ("/answer", loud, "Fewer ends"),
        "fewer ends": ("/calmer", loud, "Take striping 1"),
    }
    bare_s = seconds(lambda: bare.get("/"))
    print(f"{'bare route':>16}: {bare_s * 1000:8.2f} ms")
    for label, (address, fields, words) in asked.items():
        assert words in client.post(address, data=fields).text
        took_s = seconds(lambda where=address, what=fields: client.post(where, data=what))
        print(f"{label:>16}: {took_s * 1000:8.2f} ms, {took_s / bare_s:8.1f} bare routes")


if __name__ == "__main__":
    main()
