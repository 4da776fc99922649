"""What is weighed against an order comes after the same orders that the order comes after."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from quoting.core.quote.quote import quote_order
from quoting.core.weighing.budget import within_budget
from quoting.core.weighing.calmer_designs import calmer_designs
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.queue import Ahead
from tests.core.compared_sizes import COT, PRAM
from tests.examples import TODAY, sample_design, sample_order, sample_workshop, section

ORDER = sample_order(design=sample_design(sections=(section("teal", "rust", "oat", "plum"),)))
SHOP = sample_workshop()
AHEAD = Ahead(orders=3, hours=120, made_by=date(2027, 3, 1))


def test_every_size_comes_after_it() -> None:
    comparison = compare_sizes(ORDER, SHOP, [PRAM, COT], today=TODAY, ahead=AHEAD)
    assert comparison.base is not None
    quotes = [comparison.base, *(size.quote for size in comparison.sizes)]
    assert [quote.ahead for quote in quotes] == [AHEAD] * 3
    assert all(quote.ready_by > date(2027, 3, 1) for quote in quotes)


def test_so_does_whatever_fits_a_budget_and_whatever_would_save() -> None:
    answer = within_budget(ORDER, SHOP, [PRAM], budget=Decimal(200), today=TODAY, ahead=AHEAD)
    quotes = [fit.compared.quote for fit in answer.fits]
    saving = [each.quote for each in answer.savings]
    assert quotes
    assert saving
    assert {quote.ahead for quote in (*quotes, *saving)} == {AHEAD}


def test_so_do_calmer_stripes() -> None:
    quote = quote_order(ORDER, SHOP, today=TODAY, ahead=AHEAD)
    calmer = calmer_designs(quote, today=TODAY)
    assert calmer
    assert all(each.quote.ready_by > date(2027, 3, 1) for each in calmer)
