"""What is ticked for a card, and the card: alone for the buyer, or with the maker's buttons."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from flask import render_template, request
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from exports.papers.choices import card_of
from quoting.core.quote.quote import Quote
from quoting.web.book.mark import order_home
from quoting.web.forms.sent import Sent
from quoting.web.papers.showing import drawn, kind_of, message_page, paper_file, paper_page
from quoting.web.shop import speech_now
from quoting.wording.choices import LETTERS
from quoting.wording.shapes import made_size

TICK, ALONE = "choice", "alone"
"""Fields of the page with the ticks, and of the one that shows the card."""

OF_THE_CARD = frozenset({"csrf_token", "do", "take", ALONE})
LEAST, MOST = 2, len(LETTERS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One way to make the order, and what sends it to the worktable: an address and a form."""

    quote: Quote
    address: str
    sent: Sent

    @property
    def words(self) -> str:
        """Its size and its price, by which the maker knows it."""
        say, plan, price = speech_now(), self.quote.plan, self.quote.price
        return f"{made_size(plan, say)}, {say.money(price.total)}"


def ticked() -> list[str]:
    """Return what was ticked for a card, each once."""
    return list(dict.fromkeys(request.form.getlist(TICK)))


def wrong_ticks(known: Iterable[str], of: str) -> str:
    """Return what is wrong with the ticks of what can be made, or nothing; `of` says of what."""
    ticks, there = ticked(), set(known)
    if any(tick not in there for tick in ticks):
        return f"Of the {of} that were ticked not all can be made now: look through the ticks."
    if len(ticks) < LEAST:
        return f"For a card tick two or three {of}."
    if len(ticks) > MOST:
        return f"A card has room for three {of}: take ticks away."
    return ""


def card_page(choices: Sequence[Choice], here: str) -> ResponseReturnValue:
    """Return the card as the buyer sees it, in the form asked for, or with the maker's buttons."""
    paper = card_of([choice.quote for choice in choices])
    match request.form.get(ALONE):
        case "page":
            return paper_page(paper)
        case "pdf":
            return paper_file(paper, paper.name)
        case "message":
            return message_page(paper, order_home())
    return render_template(
        "choices/show.html",
        here=here,
        paper=paper,
        choices=list(zip(LETTERS, choices, strict=False)),
        sent=without_page_fields(request.form),
        kind_of=kind_of,
        drawn=drawn,
    )


def without_page_fields(sent: Sent, *more: str) -> Sent:
    """Return a form without what belongs to the page that it came from."""
    kept = sent.items(multi=True)
    return MultiDict([(n, text) for n, text in kept if n not in OF_THE_CARD and n not in more])
