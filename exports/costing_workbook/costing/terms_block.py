"""The terms that a price is made on, each an input, with the words that formulas read."""

from __future__ import annotations

from decimal import Decimal

from exports.sale_formulas.term_cells import (
    DEPOSITS,
    GIVEN,
    MARGIN,
    MARKUP,
    NONE,
    SHARE_OF_TOTAL,
    TARGETS,
    YARN,
    YARN_AND_SHARE,
    YES_NO,
    FeeRefs,
    TermRefs,
)
from exports.sheets.cells import Cell, Look, Ref, Value, beside, heads, written, yours
from exports.sheets.figure_lines import figure
from exports.sheets.grid import Fault, Grid
from exports.sheets.lines import Lines
from exports.sheets.number_formats import SHARE, Shapes
from exports.sheets.rules import AMOUNT, NAME, SOME, Rule, one_of, share_like
from exports.sheets.rules import SHARE as A_SHARE
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Deposit, Fee, FeeBase, Target, TaxShown

QUOTED_HEADS = [*[None] * 6, Cell("as quoted", Look.FIGURE_HEADING)]
"""The headings of figures beside which it stands what they were as quoted."""


SPARE_FEES = 2
"""Lines that wait for further fees."""


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
        self, name: str, label: str, share: float | None, note: str = "", most: float = 1
    ) -> Ref:
        """Write an input that is a share."""
        share = share or 0.0
        return self.ask(name, label, yours(share, SHARE, share_like(share, most)), note)

    def money(
        self, name: str, label: str, amount: Value, note: str = "", rule: Rule = AMOUNT
    ) -> Ref:
        """Write an input that is money."""
        return self.ask(name, label, yours(amount, self.shapes.money, rule), note)


def terms_block(grid: Grid, quote: Quote, shapes: Shapes) -> TermRefs:
    """Write every term of the sale and return its cells."""
    asking, price = Asking(grid, shapes), quote.price
    grid.block("What you ask for it")
    grid.line(*QUOTED_HEADS)
    target = target_terms(asking, price.target)
    given = asking.money(
        "given_price",
        "Given price",
        price.target.given or price.listed_each,
        "of one blanket",
        SOME,
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
        fees=fee_terms(grid, quote, shapes, "takes", "as quoted"),
    )


def target_terms(asking: Asking, *targets: Target) -> dict[str, Ref]:
    """Write what the price follows, and the first margin and markup that the targets name."""
    margin = next((each.margin for each in targets if each.margin is not None), None)
    markup = next((each.markup for each in targets if each.markup is not None), None)
    return {
        "target": asking.choose("target", "The price follows", target_word(targets[0]), *TARGETS),
        "margin": asking.share("margin", "Margin", margin, "profit, of the net price"),
        "markup": asking.share("markup", "Markup", markup, "profit, of the costs", 10),
    }


def move_terms(asking: Asking, quote: Quote) -> dict[str, Ref]:
    """Write what rounds and moves a price: step, rush, discount, the least price."""
    pricing, terms = quote.workshop.pricing, quote.order.terms
    minor = Decimal(1).scaleb(-asking.shapes.digits)
    least, note = pricing.minimum or Decimal(0), "of one blanket; not of a given price"
    return {
        "step": asking.money("round_up_to", "Round up to", pricing.round_up_to or minor, "", SOME),
        "rush": asking.share("rush", "Rush", terms.rush, "on top of the price"),
        "discount": asking.share("discount", "Discount", terms.discount, "off the price with rush"),
        "minimum": asking.money("minimum", "Minimum charge", least, note),
    }


def deposit_terms(asking: Asking, quote: Quote) -> dict[str, Ref]:
    """Write how a deposit and a second payment are reckoned."""
    pricing = quote.workshop.pricing
    deposit, note = pricing.deposit, "with the yarn: of all but the yarn"
    return {
        "deposit": asking.choose("deposit_kind", "Deposit", deposit_word(deposit), *DEPOSITS),
        "deposit_share": asking.share(
            "deposit_share", "Deposit, share of the total", deposit.share if deposit else 0, note
        ),
        "at_half": asking.share(
            "at_half_share", "When half is made, share of the total", pricing.at_half
        ),
    }


def tax_terms(asking: Asking, quote: Quote) -> dict[str, Ref]:
    """Write the terms of the sales tax."""
    tax = quote.workshop.tax
    asking.grid.block("Sales tax")
    asking.grid.line(*QUOTED_HEADS)
    registered = _yes(tax.registered)
    return {
        "registered": asking.choose("tax_registered", "Registered for it", registered, *YES_NO),
        "tax_rate": asking.share("tax_rate", "Rate", tax.rate, "read only if registered"),
        "shown": asking.choose("tax_shown", "In the price shown", tax.shown.value, *TaxShown),
        "on_delivery": asking.choose(
            "tax_on_delivery", "On delivery too", _yes(tax.on_delivery), *YES_NO
        ),
    }


def fee_terms(grid: Grid, quote: Quote, shapes: Shapes, *more: str) -> FeeRefs:
    """Write what each fee takes, and of what, and lines for further fees.

    `more` are headings of what is added to the lines from column F on; what the rate is of is
    added with them.
    """
    fees = quote.workshop.fees
    grid.block("Fees")
    of = "of" if more else ""
    titles = heads("", "on", of, "rate", "for each payment", *more, figures_from=2)
    lines = Lines(grid, len(fees) + SPARE_FEES, titles)
    rows = []
    for fee in (*fees, *[None] * SPARE_FEES):
        rows.append(grid.next_row)
        _fee(grid, fee, shapes)
    lines.close()
    on, rate, fixed, takes = (lines.figures(letter) for letter in "BDEF")
    return FeeRefs(rows=tuple(rows), on=on, rate=rate, fixed=fixed, takes=takes)


def _fee(grid: Grid, fee: Fee | None, shapes: Shapes) -> None:
    """Write a fee that is there, or a line for a further one."""
    row, rate = grid.next_row, A_SHARE.called("rate").or_empty()
    nothing = f'AND({beside("A", row)}<>"",{beside("D", row)}="",{beside("E", row)}="")'
    base, fixed = (FeeBase.TOTAL, Decimal(0)) if fee is None else (fee.on, fee.fixed)
    grid.line(
        written("" if fee is None else fee.name, NAME),
        yours(base.value, rule=one_of(*FeeBase).called("on")),
        None,
        yours("" if fee is None else fee.rate, SHARE, rate),
        yours(
            "" if fee is None else fixed,
            shapes.rate(fixed),
            AMOUNT.called("for each payment").or_empty(),
        ),
        faults=[Fault(nothing, '"what it takes is not given"')],
    )


def target_word(target: Target) -> str:
    """Return the word for what a price follows."""
    if target.given is not None:
        return GIVEN
    return MARGIN if target.margin is not None else MARKUP


def deposit_word(deposit: Deposit | None) -> str:
    """Return the word for how a deposit is reckoned."""
    if deposit is None:
        return NONE
    if not deposit.yarn:
        return SHARE_OF_TOTAL
    return YARN if deposit.share is None else YARN_AND_SHARE


def _yes(switch: bool) -> str:  # noqa: FBT001 - one switch, one word
    return "yes" if switch else "no"
