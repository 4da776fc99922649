"""A shopping list as a paper to take along: the shelf first, then balls by yarn and colour.

It is the maker's own, in her words.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from quoting.core.estimate.skeins import Bought
from quoting.core.making.shopping_lines import BuyLine, ShelfLine, ShoppingList
from quoting.wording.locales import sheet_of
from quoting.wording.paper import Amounts, Block, Facts, Listing, Paper, SaidFact, SaidRow, Words
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech

_RESERVE = "Each order’s reserve is in it. What is left of a ball goes on to the next order."


def shopping_paper(
    found: ShoppingList,
    titles: Sequence[str],
    speech: Speech,
    *,
    maker: str,
    day: date,
    spare: bool = False,
) -> Paper:
    """Return the list for the orders of these titles; with a `spare` ball of each line, or not."""
    return Paper(
        language=speech.language,
        sheet=sheet_of(speech.locale),
        name=f"Shopping list, {speech.day(day)}",
        maker=maker,
        title="Shopping list",
        heading=f"{speech.day(day)}, for {listed(titles, 'and')}" if titles else speech.day(day),
        blocks=tuple(_blocks(found, titles, speech, spare=spare)),
    )


def _blocks(
    found: ShoppingList, titles: Sequence[str], speech: Speech, *, spare: bool
) -> Iterator[Block]:
    if found.shelf:
        yield _shelf(found.shelf, speech)
    if found.to_buy:
        yield _to_buy(found.to_buy, speech, spare=spare)
        yield Amounts(rows=tuple(_amounts(found, speech, spare=spare)))
    if len(titles) > 1:
        yield Facts(heading="For each order", facts=tuple(_portions(found, titles, speech)))
    yield Words(texts=tuple(_notes(found, titles, speech)))


def _shelf(lines: Sequence[ShelfLine], speech: Speech) -> Listing:
    return Listing(
        heading="From the shelf first",
        heads=(speech.worded("Colour"), "Lot", "To take"),
        rows=tuple(
            (_named(line), line.lot or "without a number", speech.weight(line.grams))
            for line in lines
        ),
        figures_from=2,
        ticks=True,
        codes=tuple(line.code for line in lines),
    )


def _to_buy(lines: Sequence[BuyLine], speech: Speech, *, spare: bool) -> Listing:
    packs = [(line, some) for line in lines for some in _packs(line, spare=spare)]
    heads = ("Colour", "Ball", "Lot", "How many", "Price")
    return Listing(
        heading="To buy",
        heads=tuple(map(speech.worded, heads)),
        rows=tuple(_pack_row(line, some, speech) for line, some in packs),
        figures_from=3,
        ticks=True,
        codes=tuple(line.code for line, _ in packs),
    )


def _named(line: ShelfLine | BuyLine) -> str:
    return f"{line.colour}, {line.yarn}"


def _packs(line: BuyLine, *, spare: bool) -> tuple[Bought, ...]:
    return line.with_spare if spare else line.bought


def _pack_row(line: BuyLine, some: Bought, speech: Speech) -> tuple[str, ...]:
    """Return the row of some packs; the lot is to be written in where it is not known."""
    sold = some.put_up
    ball = f"{speech.weight(sold.weight_g)}, {speech.yarn_length(sold.length_m)}"
    packed = f"{ball}, pack of {speech.number(sold.pack)}" if sold.pack > 1 else ball
    return (
        _named(line),
        f"{packed}, at {speech.money(sold.price)}",
        line.lot,
        speech.number(some.packs),
        speech.money(some.cost),
    )


def _amounts(found: ShoppingList, speech: Speech, *, spare: bool) -> Iterator[SaidRow]:
    each = speech.worded("A spare ball of each line")
    if spare:
        yield SaidRow(name=speech.worded("Balls needed"), amount=speech.money(found.cost))
        yield SaidRow(name=each, amount=speech.money(found.spare_cost))
        total = speech.money(found.cost + found.spare_cost)
        yield SaidRow(name="All of it", amount=total, is_total=True)
        return
    yield SaidRow(name="All of it", amount=speech.money(found.cost), is_total=True)
    yield SaidRow(name=f"{each} would add", amount=speech.money(found.spare_cost))


def _notes(found: ShoppingList, titles: Sequence[str], speech: Speech) -> Iterator[str]:
    if found.to_buy:
        yield speech.worded(
            "Take all balls of a line from one dye lot, and write its number beside it."
        )
        yield speech.worded(_RESERVE)
    elif titles:
        yield "Nothing has to be bought."
    for number, title in enumerate(titles):
        colours = [colour for order, colour in found.there if order == number]
        if colours:
            yield f"In the house already for {title}: {listed(colours, 'and')}."


def _portions(found: ShoppingList, titles: Sequence[str], speech: Speech) -> Iterator[SaidFact]:
    lines: tuple[ShelfLine | BuyLine, ...] = (*found.shelf, *found.to_buy)
    for number, title in enumerate(titles):
        said = [
            f"{line.colour} {speech.weight(some.grams)}{_of_lot(line.lot)}"
            for line in lines
            for some in line.portions
            if some.order == number
        ]
        yield SaidFact(name=title, text=", ".join(said) or "nothing any more")


def _of_lot(lot: str) -> str:
    return f" of lot {lot}" if lot else ""
