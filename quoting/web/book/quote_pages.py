"""The maker's page of a quote that was given: what it was, what has changed, what came of it."""

from __future__ import annotations

from flask import Blueprint, Response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from exports.papers.message import paper_text
from exports.papers.offers import given_paper
from exports.records.plain_values import json_text
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import Moved
from quoting.core.quote.given_number import GivenNumber
from quoting.store.answers import DECLINED, accept_quote, decline_quote
from quoting.store.log import log_of
from quoting.store.orders import kept_order
from quoting.store.quote_content import FrozenQuote, KeptQuote
from quoting.store.quotes import kept_quote, quote_lines
from quoting.store.workshops import workshop_version
from quoting.web.book.giving import to_quote
from quoting.web.book.quote_changes import changes_since
from quoting.web.book.refusals import refused_page
from quoting.web.downloads import WORKBOOK, download
from quoting.web.kept import book_now, moment_now
from quoting.web.papers.showing import drawn, kind_of, message_page, paper_file
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.web.turns import take_turn
from quoting.wording import mistake_sentence, say_offer, told_blocks
from quoting.wording.paper import Paper

blueprint = Blueprint("given_quotes", __name__, url_prefix="/quotes")


@blueprint.get("/<given:number>")
def show(number: GivenNumber) -> str:
    """Show a quote."""
    return _page(kept_quote(book_now(), number))


@blueprint.get("/<given:number>/page")
def page(number: GivenNumber) -> Response:
    """Send the page that the buyer was sent, to the letter."""
    return Response(kept_quote(book_now(), number).frozen.page, mimetype="text/html")


@blueprint.get("/<given:number>/quote.pdf")
def pdf(number: GivenNumber) -> Response:
    """Send what the buyer was told as a PDF."""
    frozen = kept_quote(book_now(), number).frozen
    return paper_file(_paper(frozen), f"quote {number} {frozen.offer.title}")


@blueprint.get("/<given:number>/message")
def message(number: GivenNumber) -> str:
    """Show what the buyer was told as a message to be copied."""
    frozen = kept_quote(book_now(), number).frozen
    return message_page(_paper(frozen), url_for("given_quotes.show", number=number))


@blueprint.get("/<given:number>/costing.xlsx")
def workbook(number: GivenNumber) -> Response:
    """Send the costing of a quote as a spreadsheet."""
    frozen = kept_quote(book_now(), number).frozen
    take_turn()
    # Imported here because it takes longer than a page does.
    from exports.costing_workbook import workbook_bytes

    content = workbook_bytes(frozen.reckoned_again())
    return download(content, f"costing {number} {frozen.order.title}", "xlsx", WORKBOOK)


@blueprint.get("/<given:number>/results.json")
def results(number: GivenNumber) -> Response:
    """Send what came out of a quote, as it was then."""
    frozen = kept_quote(book_now(), number).frozen
    content = json_text(dict(frozen.results)).encode()
    return download(content, f"quote {number} {frozen.order.title}", "json", "application/json")


@blueprint.post("/<given:number>/accept")
def accept(number: GivenNumber) -> ResponseReturnValue:
    """Agree the order by this quote; one that has ended is asked about once more."""
    quote = kept_quote(book_now(), number)
    try:
        accept_quote(
            book_now(),
            number,
            day=shop_now().today(),
            although_ended="although_ended" in request.form,
            now=moment_now(),
        )
    except Refused as refused:
        mistake = refused.mistakes[0]
        if mistake.code == MistakeCode.QUOTE_ENDED:
            return _page(quote, said=mistake_sentence(mistake, shop_now().speech)), REFUSED
        return refused_page(refused, quote.order_id)
    return to_quote(number)


@blueprint.post("/<given:number>/decline")
def decline(number: GivenNumber) -> ResponseReturnValue:
    """Call the order off, as its buyer does not want it."""
    try:
        decline_quote(book_now(), number, now=moment_now())
    except Refused as refused:
        return refused_page(refused, kept_quote(book_now(), number).order_id)
    return to_quote(number)


@blueprint.get("/<given:number>/<any(accept, decline):deed>")
def again(number: GivenNumber, deed: str) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the quote itself."""
    del deed
    return redirect(url_for("given_quotes.show", number=number))


def _paper(frozen: FrozenQuote) -> Paper:
    return given_paper(frozen.offer, frozen.page)


def _page(quote: KeptQuote, said: str = "") -> str:
    """Return the page of a quote; what is `said` is wrong with accepting it."""
    book, shop = book_now(), shop_now()
    order, lines = kept_order(book, quote.order_id), quote_lines(book, quote.order_id)
    version = workshop_version(book, quote.frozen.workshop_version).version
    return render_template(
        "book/given_quote.html",
        here="orders",
        quote=quote,
        frozen=quote.frozen,
        told=tuple(told_blocks(say_offer(quote.frozen.offer))),
        kind_of=kind_of,
        drawn=drawn,
        text=paper_text(_paper(quote.frozen)),
        line=next(line for line in lines if line.number == quote.number),
        lines=lines,
        next_version=lines[0].number.version + 1,
        order=order,
        since=changes_since(quote.frozen, order, shop),
        saved_at=version.saved_at.astimezone(),
        given_at=quote.given_at.astimezone(),
        declined=_was_declined(quote),
        said=said,
    )


def _was_declined(quote: KeptQuote) -> bool:
    """Return whether this quote is what its order was called off for."""
    lines = (entry.line for entry in log_of(book_now(), quote.order_id))
    moves = [line for line in lines if isinstance(line, Moved)]
    last = moves[-1] if moves else None
    return last is not None and (last.quote, last.why) == (str(quote.number), DECLINED)
