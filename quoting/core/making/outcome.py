"""Afterwards: the estimate beside what an order really took, and what an hour of it earned."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.ground.money import exact, product, round_hours, round_money
from quoting.core.making.log_lines import Doing, LogEntry, YarnTaken
from quoting.core.making.progress import of_colour
from quoting.core.making.took import grams_taken, minutes_taken, rows_projected
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import YarnCharged

NO_HOURS = Decimal(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkOutcome:
    """Hours of one kind of work: `expected`, and what it `took`, None where that is not known."""

    doing: Doing
    expected: Decimal
    took: Decimal | None

    @property
    def difference(self) -> Decimal | None:
        """How many hours more than expected it took."""
        return None if self.took is None else self.took - self.expected

    @property
    def share(self) -> float | None:
        """What part of the hours expected the difference is; None where none were, too."""
        return _share_off(self.took, self.expected)


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourOutcome:
    """Grams of one colour, and what its yarn cost: None for what is not known."""

    colour: str
    expected_g: float
    took_g: float | None
    expected_cost: Decimal
    cost: Decimal | None

    @property
    def difference_g(self) -> float | None:
        """How many grams more than expected it took."""
        return None if self.took_g is None else self.took_g - self.expected_g

    @property
    def share(self) -> float | None:
        """What part of the grams expected the difference is."""
        return _share_off(self.took_g, self.expected_g)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """An order that is finished: what was stated and what it took.

    `work` has every kind of work, `colours` every colour of the estimate. `other_costs` are those
    of extras, packaging and delivery; `revenue` is what is left of the total after tax and fees.
    `projected` are the rows that no session told: their hours go by those of the others.
    """

    work: tuple[WorkOutcome, ...]
    colours: tuple[ColourOutcome, ...]
    currency: str
    revenue: Decimal
    other_costs: Decimal
    overhead_per_hour: Decimal
    expected_hours: Decimal
    low_hours: Decimal
    high_hours: Decimal
    earned_expected: Decimal
    projected: tuple[int, ...] = ()

    @property
    def hours(self) -> Decimal | None:
        """All hours, where those at the hook are known.

        Of other work that no session told, what was expected of it stands in: see `stood_in`.
        """
        if any(part.took is None for part in self.work if part.doing is Doing.AT_THE_HOOK):
            return None
        taken = (part.expected if part.took is None else part.took for part in self.work)
        return sum(taken, NO_HOURS)

    @property
    def stood_in(self) -> tuple[Doing, ...]:
        """The work that was expected and that no session told."""
        return tuple(part.doing for part in self.work if part.took is None and part.expected)

    @property
    def hours_share(self) -> float | None:
        """What part of all hours expected the difference is."""
        return _share_off(self.hours, self.expected_hours)

    @property
    def in_range(self) -> bool | None:
        """Whether the hours came to lie within the range that was stated."""
        return None if self.hours is None else self.low_hours <= self.hours <= self.high_hours

    @property
    def expected_g(self) -> float:
        """The grams of yarn expected."""
        return math.fsum(colour.expected_g for colour in self.colours)

    @property
    def took_g(self) -> float | None:
        """The grams of yarn that it took, where all colours are known."""
        grams = [colour.took_g for colour in self.colours if colour.took_g is not None]
        return math.fsum(grams) if len(grams) == len(self.colours) else None

    @property
    def yarn_cost(self) -> Decimal:
        """What all yarn cost; of a colour of which it is not known, what was expected."""
        costs = (some.expected_cost if some.cost is None else some.cost for some in self.colours)
        return sum(costs, Decimal(0))

    @property
    def earned(self) -> Decimal | None:
        """What an hour of the maker's earned: all but costs, over the hours; None if unknown."""
        hours = self.hours
        if not hours:
            return None
        overhead = round_money(product(hours, self.overhead_per_hour), self.currency)
        kept = self.revenue - self.other_costs - self.yarn_cost - overhead
        return round_money(kept / hours, self.currency)


def outcome_of(quote: Quote, entries: tuple[LogEntry, ...]) -> Outcome:
    """Return what an order that is finished took, beside what its quote said."""
    price, hours = quote.price, quote.estimate.hours
    return Outcome(
        work=tuple(_work(quote, entries, doing) for doing in Doing),
        colours=tuple(_colour(quote, entries, colour) for colour in quote.estimate.colours),
        currency=price.currency,
        revenue=price.total - price.tax - price.fees,
        other_costs=price.amount(LineKind.EXTRA, LineKind.PACKAGING, LineKind.DELIVERY),
        overhead_per_hour=quote.workshop.pay.overhead_per_hour,
        expected_hours=hours.total,
        low_hours=hours.low,
        high_hours=hours.high,
        earned_expected=price.earned_per_hour,
        projected=rows_projected(quote, entries),
    )


def _work(quote: Quote, entries: tuple[LogEntry, ...], doing: Doing) -> WorkOutcome:
    minutes = minutes_taken(quote, entries, doing)
    hours = quote.estimate.hours
    return WorkOutcome(
        doing=doing,
        expected=sum((hours.of(part) for part in doing.parts), NO_HOURS),
        took=None if minutes is None else round_hours(minutes),
    )


def _colour(quote: Quote, entries: tuple[LogEntry, ...], colour: ColourEstimate) -> ColourOutcome:
    took_g = grams_taken(quote, entries, colour)
    return ColourOutcome(
        colour=colour.colour,
        expected_g=colour.grams,
        took_g=took_g,
        expected_cost=quote.price.yarn_cost(colour.colour),
        cost=_yarn_cost(quote, entries, colour, took_g),
    )


def _yarn_cost(
    quote: Quote, entries: tuple[LogEntry, ...], colour: ColourEstimate, took_g: float | None
) -> Decimal | None:
    """Return what a colour's yarn cost, as far as it was told.

    What was paid for it, and by the gram at the cheapest price what was taken without one; of that
    the part used, where the price carries only that. Where no price was told, whole balls cost what
    they were to, whatever was used of them; by the gram it is the part of the cost expected that
    the grams used are of those expected.
    """
    charged = quote.workshop.pricing.yarn_charged
    money, yarn = quote.workshop.currency, quote.workshop.yarn(colour.source.yarn)
    taken = of_colour(quote, entries, YarnTaken, colour.colour)
    if all(line.cost is None for line in taken):
        if took_g is None or (charged is YarnCharged.BOUGHT and colour.choice.skeins):
            return None
        expected = quote.price.yarn_cost(colour.colour)
        return round_money(expected * exact(took_g) / exact(colour.grams), money)
    costs = (
        exact(line.grams) * yarn.cheapest_per_gram if line.cost is None else line.cost
        for line in taken
    )
    paid = sum(costs, Decimal(0))
    taken_g = math.fsum(line.grams for line in taken)
    if charged is YarnCharged.USED and took_g is not None:
        paid *= min(Decimal(1), exact(took_g) / exact(taken_g))
    return round_money(paid, money)


def _share_off(took: Decimal | float | None, expected: Decimal | float) -> float | None:
    return float(took) / float(expected) - 1 if took is not None and expected else None
