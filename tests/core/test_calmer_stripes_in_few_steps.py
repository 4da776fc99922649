"""Calmer stripes: however large the order, only so many designs are looked at."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from quoting.core.order.in_rows import Section
from quoting.core.order.order import Order
from quoting.core.weighing import calmer_stripes as module
from quoting.core.weighing.alternatives import OFFERED
from quoting.core.weighing.calmer_stripes import PLANNED, WALKED, calmer_stripes
from quoting.core.weighing.stripe_search import TRIES_IN_ALL
from tests.core.striped_orders import striped
from tests.examples import COLOURS, TODAY, sample_quote, section, stripes

pytestmark = pytest.mark.slow


def counting(monkeypatch: pytest.MonkeyPatch, name: str) -> list[Any]:
    """Count the calls that the search makes of a function."""
    calls: list[Any] = []
    real: Callable[..., object] = getattr(module, name)

    def counted(*args: object, **kwargs: object) -> object:
        calls.append(args)
        return real(*args, **kwargs)

    monkeypatch.setattr(module, name, counted)
    return calls


MANY = tuple(
    section(*colours, rows=rows, share=1)
    for rows in (1, 2)
    for colours in (("oat", "teal"), ("rust", "plum", "moss", "slate"), tuple(COLOURS))
)


@pytest.mark.parametrize(
    "order",
    [
        striped(section(*COLOURS)),
        striped(*MANY, height_cm=300),
        replace(striped(section("oat", "teal", "rust", "plum")), quantity=40),
        striped(
            Section(stripes=stripes(*("oat", "teal", "rust", "plum") * 120, rows=3), repeats=1)
        ),
        striped(section("oat", "teal"), width_cm=30, height_cm=1000),
    ],
    ids=["six colours", "many sections", "many blankets", "a long repeat", "a long blanket"],
)
def test_however_large_the_order_only_so_many_designs_are_looked_at(
    order: Order, monkeypatch: pytest.MonkeyPatch
) -> None:
    quote = sample_quote(order)
    planned, walked, quoted = (
        counting(monkeypatch, name) for name in ("plan_order", "estimate_plan", "quote_order")
    )
    found = calmer_stripes(quote, today=TODAY)
    assert 0 < len(planned) <= PLANNED
    assert len(planned) * len(quote.plan.rows) <= max(
        module.ROWS_PLANNED, OFFERED * len(quote.plan.rows)
    )
    assert len(walked) <= WALKED
    assert len(found) <= len(quoted) <= OFFERED


def test_many_sections_share_the_tries_of_one_search(monkeypatch: pytest.MonkeyPatch) -> None:
    quote = sample_quote(striped(*MANY, height_cm=300))
    searches = counting(monkeypatch, "calmer_repeats")
    calmer_stripes(quote, today=TODAY)
    assert len(searches) > 2
    assert sum(tries for _, _, tries in searches) <= TRIES_IN_ALL
