"""An order and a workshop to change one thing of, and what every workbook's terms stand for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from quoting.core.order.order import Order
from quoting.core.workshop.selling import Deposit, Fee, FeeBase, Target, TaxShown
from quoting.core.workshop.workshop import Workshop

ALL_WELL = "All checks are well."
TWO_FEES = (
    Fee(name="Card payment", rate=0.015, fixed=Decimal("0.20")),
    Fee(name="Market stall", rate=0.05, fixed=Decimal("0.10"), on=FeeBase.PRICE),
)


@dataclass(frozen=True, slots=True)
class Job:
    """What a workbook is of; each method returns the job with something of it changed."""

    order: Order
    shop: Workshop

    def terms(self, **changes: Any) -> Job:
        """Return it with other terms of the order."""
        terms = replace(self.order.terms, **changes)
        return replace(self, order=replace(self.order, terms=terms))

    def extra(self, **changes: Any) -> Job:
        """Return it with another first extra."""
        extras = (replace(self.order.extras[0], **changes), *self.order.extras[1:])
        return replace(self, order=replace(self.order, extras=extras))

    def shop_with(self, **changes: Any) -> Job:
        """Return it with something else in the workshop."""
        return replace(self, shop=replace(self.shop, **changes))

    def part(self, name: str, **changes: Any) -> Job:
        """Return it with a part of the workshop changed: its pay, its tax, its minutes."""
        return self.shop_with(**{name: replace(getattr(self.shop, name), **changes)})

    def fee(self, name: str, **changes: Any) -> Job:
        """Return it with one of the fees changed."""
        fees = self.shop.fees
        return self.shop_with(
            fees=tuple(replace(fee, **changes) if fee.name == name else fee for fee in fees)
        )


Change = Callable[[Job, Any], Job]
"""What the program is asked for instead, where a figure is changed to another."""

Place = tuple[str, str]
"""The label of a line, and the letter of a column."""


def money(value: Any) -> Decimal:
    """Return an amount as a cell has it."""
    return Decimal(str(value))


def as_it_was(job: Job, value: Any) -> Job:
    """Return the same job: what was changed moves nothing by itself."""
    del value
    return job


def _of_fee(name: str) -> Mapping[Place, Change]:
    return {
        (name, "A"): as_it_was,
        (name, "B"): lambda job, v: job.fee(name, on=FeeBase(v)),
        (name, "D"): lambda job, v: job.fee(name, rate=v),
        (name, "E"): lambda job, v: job.fee(name, fixed=money(v)),
    }


TERMS: dict[Place, Change] = {
    ("Gift box", "E"): lambda job, v: job.extra(cost=money(v)),
    ("Packaging", "E"): lambda job, v: job.part("delivery", packaging=money(v)),
    **_of_fee("Card payment"),
    **_of_fee("Market stall"),
    ("The price follows", "F"): lambda job, _: job.part("pricing", target=Target(markup=0.0)),
    ("Margin", "F"): lambda job, v: job.part("pricing", target=Target(margin=v)),
    ("Markup", "F"): as_it_was,
    ("Round up to", "F"): lambda job, v: job.part("pricing", round_up_to=money(v)),
    ("Rush", "F"): lambda job, v: job.terms(rush=v),
    ("Discount", "F"): lambda job, v: job.terms(discount=v),
    ("Minimum charge", "F"): lambda job, v: job.part("pricing", minimum=money(v)),
    ("Deposit", "F"): lambda job, _: job.part("pricing", deposit=None),
    ("Deposit, share of the total", "F"): lambda job, v: job.part(
        "pricing", deposit=Deposit(share=v)
    ),
    ("When half is made, share of the total", "F"): lambda job, v: job.part("pricing", at_half=v),
    ("Registered for it", "F"): lambda job, _: job.part("tax", registered=False),
    ("Rate", "F"): lambda job, v: job.part("tax", rate=v),
    ("In the price shown", "F"): lambda job, _: job.part("tax", shown=TaxShown.ADDED),
    ("On delivery too", "F"): lambda job, _: job.part("tax", on_delivery=False),
}
"""The terms that stand in the same words and columns in every workbook."""


def pay_of(column: str) -> dict[Place, Change]:
    """Return the pay of an hour, which stands in another column of each workbook."""
    return {
        ("Making", column): lambda job, v: job.part("pay", making_per_hour=money(v)),
        ("Admin: photos, packing, messages", column): lambda job, v: job.part(
            "pay", office_per_hour=money(v)
        ),
        ("Overhead", column): lambda job, v: job.part("pay", overhead_per_hour=money(v)),
    }
