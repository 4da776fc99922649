"""What heads the ends of several blankets: what is to become of them, where it is one thing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.order.design import EndsBecome
from quoting.core.quote.quote import Quote
from quoting.wording.ends import ends_of_all
from tests.examples import sample_design, sample_order, sample_quote


def in_rows(become: EndsBecome) -> Quote:
    return sample_quote(replace(sample_order(), design=sample_design(ends=become)))


@pytest.mark.parametrize(
    ("become", "heading"),
    [
        (EndsBecome.WOVEN_IN, "ends to weave in"),
        (EndsBecome.WORKED_OVER, "ends to work over"),
    ],
)
def test_ends_that_all_become_the_same_are_headed_by_it(become: EndsBecome, heading: str) -> None:
    assert ends_of_all([in_rows(become), in_rows(become)]) == heading


def test_ends_of_which_one_blanket_leaves_some_within_are_headed_as_ends() -> None:
    order = sample_order(design=sample_design(ends=EndsBecome.ENCLOSED), quantity=3)
    within = sample_quote(order)
    assert ends_of_all([within]) == "ends"
    assert ends_of_all([in_rows(EndsBecome.WOVEN_IN), within]) == "ends"
    assert ends_of_all([in_rows(EndsBecome.WOVEN_IN), in_rows(EndsBecome.WORKED_OVER)]) == "ends"
