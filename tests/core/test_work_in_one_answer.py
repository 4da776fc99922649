"""No answer works out more rows than one order may have, whatever is multiplied with what."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate.estimate import MOST_PASSES, work_of
from quoting.core.ground.errors import Mistake, Refused
from quoting.core.order.resizing import Size
from quoting.core.quote import quote
from quoting.core.weighing import comparison
from quoting.core.weighing.alternatives import MOST_VARIED
from quoting.core.weighing.budget import within_budget
from quoting.core.weighing.calmer_stripes import calmer_stripes
from quoting.core.weighing.comparison import MOST_COMPARED, compare_sizes
from tests.examples import TODAY, sample_design, sample_order, sample_quote, sample_workshop

SIZES = [Size(width_cm=60.0 + number, height_cm=100.0) for number in range(50)]
ROWS = len(sample_quote().plan.passes)
WORKSHOP = sample_workshop()


def why(call: Callable[[], object]) -> Mistake:
    with pytest.raises(Refused) as refused:
        call()
    (mistake,) = refused.value.mistakes
    return mistake


def test_an_order_of_more_rows_than_one_answer_works_out_is_refused() -> None:
    most = MOST_PASSES // ROWS
    sample_quote(sample_order(quantity=most))
    mistake = why(lambda: sample_quote(sample_order(quantity=most + 1)))
    assert (mistake.path, mistake.facts["limit"]) == ("order.quantity", most)


def test_fifty_sizes_of_one_blanket_are_compared() -> None:
    assert len(compare_sizes(sample_order(), WORKSHOP, SIZES, today=TODAY).sizes) == 50


def test_sizes_and_blankets_that_come_to_too_many_rows_together_are_refused_early(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    worked: list[int] = []
    real = quote.quote_order

    def counted(order: Any, *args: Any, **kwargs: Any) -> Any:
        done = real(order, *args, **kwargs)
        worked.append(work_of(done.plan, order.quantity))
        return done

    monkeypatch.setattr(comparison, "quote_order", counted)
    order = sample_order(quantity=200)
    mistake = why(lambda: compare_sizes(order, WORKSHOP, SIZES, today=TODAY))
    assert (mistake.path, mistake.code) == ("sizes", "too-much-at-once")
    assert sum(worked) <= MOST_COMPARED


def test_an_order_too_large_to_vary_is_refused_a_budget_and_calmer_stripes() -> None:
    large = sample_order(design=sample_design(height_cm=1000.0), quantity=30)
    assert work_of(sample_quote(large).plan, 30) > MOST_VARIED
    budget = Decimal(900)
    mistake = why(lambda: within_budget(large, WORKSHOP, SIZES[:1], budget=budget, today=TODAY))
    assert (mistake.path, mistake.code) == ("budget", "too-large-to-vary")
    assert why(lambda: calmer_stripes(sample_quote(large), today=TODAY)).code == mistake.code
    smaller = sample_order(quantity=10)
    assert within_budget(smaller, WORKSHOP, SIZES[:1], budget=budget, today=TODAY).fits
