"""The terms that a price is made on, each an input, with the words that formulas read."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from exports.sheets.cells import Cell, Ref, Value, heads, words, yours
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Grid
from exports.sheets.number_formats import SHARE, Shapes
from exports.sheets.rules import AMOUNT, Rule, one_of
from exports.sheets.rules import MARKUP as A_MARKUP
from exports.sheets.rules import SHARE as A_SHARE
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Deposit, FeeBase, Target, TaxShown

MARGIN, MARKUP, GIVEN = TARGETS = ("margin", "markup", "given price")
NONE, SHARE_OF_TOTAL, YARN = DEPOSITS = ("none", "share of the total", "the yarn")
YES_NO = ("yes", "no")


@dataclass(frozen=True, slots=True, kw_only=True)
class FeeRefs:
    """The cells of one fee."""

    name: str
    on: Ref
    rate: Ref
    fixed: Ref


@dataclass(frozen=True, slots=True, kw_only=True)
class TermRefs:
    """The cells of every term of the sale."""

    target: Ref
    margin: Ref
    markup: Ref
    given: Ref
    step: Ref
    rush: Ref
    discount: Ref
    minimum: Ref
    delivery: Ref
    registered: Ref
    tax_rate: Ref
    shown: Ref
    on_delivery: Ref
    deposit: Ref
    deposit_share: Ref
    fees: tuple[FeeRefs, ...]


class Asking:
    """Writes one input to a line, with its label, its name and what is said of it."""

    def __init__(self, grid: Grid, shapes: Shapes) -> None:
        self.grid = grid
        self.shapes = shapes

    def ask(self, name: str, label: str, cell: Cell, note: str = "") -> Ref:
        """Write an input and return its cell."""
        return figure(self.grid, label, cell, note, name=name)

    def choose(self, name: str, label: str, word: str, *words_there: str) -> Ref:
        """Write an input that takes one of a few words."""
        cell = yours(word, rule=one_of(*words_there))
        return self.ask(name, label, cell, "one of: " + ", ".join(words_there))

    def share(
        self, name: str, label: str, share: float | None, note: str = "", rule: Rule = A_SHARE
    ) -> Ref:
        """Write an input that is a share."""
        return self.ask(name, label, yours(share or 0, SHARE, rule), note)

    def money(self, name: str, label: str, amount: Value, note: str = "") -> Ref:
        """Write an input that is money."""
        return self.ask(name, label, yours(amount, self.shapes.money, AMOUNT), note)


def terms_block(grid: Grid, quote: Quote, shapes: Shapes) -> TermRefs:
    """Write every term of the sale and return its cells."""
    asking, price = Asking(grid, shapes), quote.price
    grid.block("What you ask for it")
    target = target_terms(asking, price.target)
    given = asking.money(
        "given_price",
        "Given price",
        price.target.given or price.listed_each,
        "of one blanket",
    )
    moves = move_terms(asking, quote)
    delivery = asking.money("delivery_charged", "Delivery charged", price.delivery)
    return TermRefs(
        **target,
        given=given,
        **moves,
        delivery=delivery,
        **deposit_terms(asking, quote),
        **tax_terms(asking, quote),
        fees=fee_terms(grid, quote, shapes),
    )


def target_terms(asking: Asking, *targets: Target) -> dict[str, Ref]:
    """Write what the price follows, and the first margin and markup that the targets name."""
    margin = next((each.margin for each in targets if each.margin is not None), None)
    markup = next((each.markup for each in targets if each.markup is not None), None)
    return {
        "target": asking.choose("target", "The price follows", target_word(targets[0]), *TARGETS),
        "margin": asking.share("margin", "Margin", margin, "profit, of the net price"),
        "markup": asking.share("markup", "Markup", markup, "profit, of the costs", A_MARKUP),
    }


def move_terms(asking: Asking, quote: Quote) -> dict[str, Ref]:
    """Write what rounds and moves a price: step, rush, discount, the least price."""
    pricing, terms = quote.workshop.pricing, quote.order.terms
    minor = Decimal(1).scaleb(-asking.shapes.digits)
    least, note = pricing.minimum or Decimal(0), "of one blanket; not of a given price"
    return {
        "step": asking.money("round_up_to", "Round up to", pricing.round_up_to or minor),
        "rush": asking.share("rush", "Rush", terms.rush, "on top of the price"),
        "discount": asking.share("discount", "Discount", terms.discount, "off the price with rush"),
        "minimum": asking.money("minimum", "Least price", least, note),
    }


def deposit_terms(asking: Asking, quote: Quote) -> dict[str, Ref]:
    """Write how a deposit is reckoned."""
    deposit = quote.workshop.pricing.deposit
    return {
        "deposit": asking.choose("deposit_kind", "Deposit", deposit_word(deposit), *DEPOSITS),
        "deposit_share": asking.share(
            "deposit_share", "Deposit, share of the total", deposit.share if deposit else 0
        ),
    }


def tax_terms(asking: Asking, quote: Quote) -> dict[str, Ref]:
    """Write the terms of the sales tax."""
    tax = quote.workshop.tax
    asking.grid.block("Sales tax")
    registered = _yes(tax.registered)
    return {
        "registered": asking.choose("tax_registered", "Registered for it", registered, *YES_NO),
        "tax_rate": asking.share("tax_rate", "Rate", tax.rate, "read only if registered"),
        "shown": asking.choose("tax_shown", "In the price shown", tax.shown.value, *TaxShown),
        "on_delivery": asking.choose(
            "tax_on_delivery", "On delivery too", _yes(tax.on_delivery), *YES_NO
        ),
    }


def fee_terms(grid: Grid, quote: Quote, shapes: Shapes) -> tuple[FeeRefs, ...]:
    """Write what each fee takes, and of what."""
    if not quote.workshop.fees:
        return ()
    grid.block("Fees")
    grid.line(*heads("", "on", "", "", "rate", "for each payment", figures_from=2))
    refs = []
    for fee in quote.workshop.fees:
        _, on, rate, fixed = grid.line(
            words(fee.name),
            yours(fee.on.value, rule=one_of(*FeeBase).called("on")),
            None,
            None,
            yours(fee.rate, SHARE, A_SHARE.called("rate")),
            yours(fee.fixed, shapes.rate(fee.fixed), AMOUNT.called("for each payment")),
        )
        refs.append(FeeRefs(name=fee.name, on=on, rate=rate, fixed=fixed))
    return tuple(refs)


def target_word(target: Target) -> str:
    """Return the word for what a price follows."""
    if target.given is not None:
        return GIVEN
    return MARGIN if target.margin is not None else MARKUP


def deposit_word(deposit: Deposit | None) -> str:
    """Return the word for how a deposit is reckoned."""
    if deposit is None:
        return NONE
    return YARN if deposit.yarn else SHARE_OF_TOTAL


def _yes(switch: bool) -> str:  # noqa: FBT001 - one switch, one word
    return "yes" if switch else "no"
