"""What a buyer's budget buys, on the Sizes page."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.order.resizing import Size
from quoting.core.weighing.budget import within_budget
from tests.examples import TODAY, sample_workshop
from tests.web.asked_sizes import PRICES, SAY, SIX, TYPED, ask
from tests.web.conftest import ORDER, Maker


def test_a_budget_shows_what_fits_and_the_largest_that_still_pays_the_hour(maker: Maker) -> None:
    page = ask(maker, budget="300", own__1__size="90x90")
    sizes = [*SIX, Size(width_cm=90, height_cm=90, label="90 × 90 cm")]
    found = within_budget(ORDER, sample_workshop(), sizes, budget=Decimal(300), today=TODAY)
    assert "With £300.00 to spend" in page.headings
    assert found.largest is not None
    assert f"{sizes[found.largest]} is the largest of these" in page.root.text
    assert any(fit.pays_the_hour and not fit.fits for fit in found.fits)
    rows = page.table("At your target")[1:]
    for row, fit in zip(rows, found.fits, strict=True):
        assert fit.at_budget is not None
        assert row == [
            str(fit.compared.size),
            "fits" if fit.fits else "too expensive",
            SAY.bare_money(fit.compared.quote.price.total),
            SAY.bare_money(fit.at_budget.earned_per_hour),
            "paid" if fit.pays_the_hour else "not paid",
        ]


def test_a_budget_leaves_the_comparison_at_the_prices_that_were_typed(maker: Maker) -> None:
    page = ask(maker, asks="prices", budget="300", **TYPED)
    assert [row[2] for row in page.table("Size asked")[1:]] == [
        SAY.bare_money(price) for price in PRICES.values()
    ]


def test_a_budget_that_pays_no_hour_says_so(maker: Maker) -> None:
    page = ask(maker, budget="6")
    assert "None of these sizes pays your hour at that budget" in page.root.text


def test_what_could_change_is_shown_with_its_effect_in_money(maker: Maker) -> None:
    rows = ask(maker, budget="250").table("Takes off, GBP")[1:]
    found = within_budget(ORDER, sample_workshop(), SIX, budget=Decimal(250), today=TODAY)
    assert found.savings
    assert [row[1] for row in rows] == [SAY.bare_money(s.saved) for s in found.savings]
    assert "One border round less" in [row[0] for row in rows]
