"""Overhead rates of a year, and what a job costs at them: against published problems."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import Estimate
from quoting.core.estimate.hours import Hours, Task
from quoting.core.order.order import Extra
from quoting.core.plan.gauge import Sureness
from quoting.core.price.cost_lines import LineKind, cost_lines
from quoting.core.workshop.pay_rates import Year, pay_rates
from quoting.core.workshop.selling import Delivery, Pay
from tests.examples import sample_order, sample_workshop


def job_cost(
    *, materials: str, hours: float, pay: str, overhead: str
) -> tuple[Decimal, dict[LineKind, Decimal]]:
    """Return what a job costs in all, and by kind of line."""
    work = Task(
        part=Part.STITCHING,
        what="hdc",
        count=hours,
        minutes_each=60,
        sureness=Sureness.MEASURED,
        timed_stitch="hdc",
        shared_min=0,
    )
    rates = Pay(
        making_per_hour=Decimal(pay),
        office_per_hour=Decimal(pay),
        overhead_per_hour=Decimal(overhead),
    )
    lines = cost_lines(
        sample_order(extras=(Extra(what="Materials", cost=Decimal(materials)),)),
        Estimate(colours=(), strands=(), hours=Hours(tasks=(work,))),
        sample_workshop(pay=rates, delivery=Delivery()),
    )
    amounts = {line.kind: line.amount for line in lines}
    return sum(amounts.values(), Decimal(0)), amounts


def test_a_job_cost_sheet_with_overhead_as_a_share_of_labour() -> None:
    """15,350 + 3,200 + 130 % of 3,200 = 22,710.

    Source: job-order costing problem, Wild type. The labour is put as 200 hours at 16.00, and 130 %
    of it as 20.80 an hour.
    """
    total, amounts = job_cost(materials="15350", hours=200, pay="16.00", overhead="20.80")
    assert amounts[LineKind.MAKING] == 3200
    assert amounts[LineKind.OVERHEAD] == 4160
    assert total == 22_710


def test_the_overhead_of_a_year_by_its_labour_hours() -> None:
    """(378,000 + 2.20 · 60,000) / 60,000 = 8.50 an hour.

    Source: job-order costing problem, Garrison type. The shop has ten hands there and one here: a
    tenth of the cost and of the hours.
    """
    overhead = (Decimal(378_000) + Decimal("2.20") * 60_000) / 10
    year = Year(income=Decimal(0), overhead=overhead, weeks=50, hours_a_week=120)
    assert year.hours == 6000
    assert pay_rates(year, "USD").overhead_per_hour == Decimal("8.50")


def test_a_job_that_carries_that_overhead() -> None:
    """630 + 2,400 + 120 · 8.50 = 4,050.

    Source: the same problem. The labour is put as 120 hours at 20.00.
    """
    total, amounts = job_cost(materials="630", hours=120, pay="20.00", overhead="8.50")
    assert amounts[LineKind.OVERHEAD] == 1020
    assert total == 4050


def test_a_builders_year() -> None:
    """44 hours in 44.2 weeks: 1,945 h; 58,344 a year is 30.00 an hour, 10,000 of overhead 5.14.

    Source: BRANZ, *Build* 133, Setting charge-out rates, table 1.
    """
    year = Year(income=Decimal(58_344), overhead=Decimal(10_000), weeks=44.2, hours_a_week=44)
    rates = pay_rates(year, "NZD")
    assert round(rates.hours) == 1945
    assert (rates.making_per_hour, rates.overhead_per_hour) == (Decimal("30.00"), Decimal("5.14"))
