"""The answer of the Sizes page: the sizes compared, the budget, or what is to be put right."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass

from wtforms import Field

from quoting.core.ground.errors import Mistake, Refused
from quoting.core.ground.place import Place, at
from quoting.core.order.order import Order
from quoting.core.weighing.budget import BudgetAnswer, within_budget
from quoting.core.weighing.comparison import Comparison, compare_sizes
from quoting.web.beside import Where, say_beside, words_beside
from quoting.web.orders.order_answer import Said, Words
from quoting.web.queue_now import ahead_now
from quoting.web.shop import Shop
from quoting.web.sizes.size_form import SizesForm
from quoting.web.sizes.size_reading import Asked, read_asked
from quoting.web.turns import take_turn, take_turn_for
from quoting.wording import mistake_sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class SizesAnswer:
    """The order with its sizes compared; no comparison where there is nothing to compare yet.

    `order` is None where the one that came along cannot be read; then `said` has its mistakes.
    """

    form: SizesForm
    order: Order | None
    comparison: Comparison | None = None
    budget: BudgetAnswer | None = None
    said: tuple[Said, ...] = ()
    wanting: tuple[Said, ...] = ()

    @property
    def words(self) -> Iterator[Words]:
        """What is said beside single fields."""
        return words_beside(self.form)


def answer_sizes(form: SizesForm, order: Order, shop: Shop) -> SizesAnswer:
    """Return the answer to a form."""
    try:
        asked = read_asked(form, order, shop)
        _take_turn(asked, order, shop)
        budget = _budget(asked, order, shop)
        comparison = _comparison(asked, order, shop, budget)
    except Refused as refused:
        mistakes = [_at_a_field(mistake) for mistake in refused.mistakes]
        said = say_beside(form, mistakes, shop.speech, _where(shop))
        return SizesAnswer(form=form, order=order, said=said)
    return SizesAnswer(form=form, order=order, comparison=comparison, budget=budget)


def unread_order(form: SizesForm, refused: Refused, shop: Shop) -> SizesAnswer:
    """Return the answer to a form whose order cannot be read: what is wrong with the order."""
    said = tuple(
        Said(
            where=f"The order, {mistake.place}" if mistake.place.parts else "The order",
            sentence=mistake_sentence(mistake, shop.speech),
            field_id="",
        )
        for mistake in refused.mistakes
    )
    return SizesAnswer(form=form, order=None, said=said)


def _take_turn(asked: Asked, order: Order, shop: Shop) -> None:
    """Take a turn where there is much to compare; savings are many orders in one."""
    if asked.budget is not None:
        take_turn()
        return
    with suppress(Refused):  # an order that cannot be made at its own size may be at another
        take_turn_for(order, shop.workshop, sizes=len(asked.sizes))


def _budget(asked: Asked, order: Order, shop: Shop) -> BudgetAnswer | None:
    if asked.budget is None or not asked.sizes:
        return None
    return within_budget(
        order,
        shop.workshop,
        asked.sizes,
        budget=asked.budget,
        today=shop.today(),
        ahead=ahead_now(),
    )


def _comparison(
    asked: Asked, order: Order, shop: Shop, budget: BudgetAnswer | None
) -> Comparison | None:
    """Return the comparison asked for; under a budget the one at the target is there already."""
    if not asked.sizes:
        return None
    if budget is not None and asked.prices is None:
        return budget.comparison
    return compare_sizes(
        order,
        shop.workshop,
        asked.sizes,
        today=shop.today(),
        ahead=ahead_now(),
        prices=asked.prices,
    )


def _at_a_field(mistake: Mistake) -> Mistake:
    """Return a mistake of the whole list at the list that can be made shorter."""
    moved = at("own") if mistake.place.parts == ("sizes",) else mistake.place
    return Mistake(moved, mistake.code, mistake.facts)


def _where(shop: Shop) -> Where:
    def where(place: Place, field: Field | None) -> str:
        label = field.label.text if field is not None else "The order"
        match place.parts:
            case ("ordered", *_):
                return f"The order’s own size, {label}"
            case ("customary", int(number), *_):
                return f"{shop.sizes[number - 1].name}, {label}"
            case ("own", int(number), *_):
                return f"Own size {number}, {label}"
        return label

    return where
