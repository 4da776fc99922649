"""What a book keeps of an order, without the name of its buyer and what identifies her.

Words of people are the title, the notes, what goes with the blanket, remarks and reasons. All
else is left to the letter: a colour or a yarn may have the same name as she has.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from html import escape
from typing import Any

from quoting.core.quote.offer import Offer
from quoting.schema.offer_shape import read_offer
from quoting.store.name_words import FORGOTTEN, NameWords
from quoting.store.order_content import Typed

MOST_TITLE = 80
"""Characters of a title that an order may have."""

Told = Callable[[Offer, str], Mapping[str, str]]
"""Tells what stands in the marked places of an offer's page that is written in a language."""

_BUYER, _TITLE, _NOTES = "order.buyer", "order.title", "order.notes"
_OF_ORDER = re.compile(r"(?:order|blanket|extras|price)\..+|price_by|size")
"""Fields that belong to an order; what else a form carries may be the whole of one as a text."""

_EXTRA = re.compile(r"extras\.\d+\.what")
_WORDS_IN_LOG = {"remark": "text", "moved": "why"}

_MARKED = re.compile(r"""(<\w+[^<>]*\s(?:data-of="(\w+)"|id="[\w-]+-title")[^<>]*>)[^<]*""")
"""The beginning of an element in which words of people are, and these; a drawing has an id."""

_LANGUAGE = re.compile(r"""<html lang="(\w+)""")


def typed_without(typed: Typed, words: NameWords) -> Typed:
    """Return what was typed of an order without its buyer; lines that were removed are gone."""
    of_order = ((name, texts) for name, texts in typed.items() if _OF_ORDER.fullmatch(name))
    return {name: _field(name, texts, words) for name, texts in of_order}


def _field(name: str, texts: tuple[str, ...], words: NameWords) -> tuple[str, ...]:
    if name == _BUYER:
        return (FORGOTTEN,)
    if name == _NOTES:
        return ("",)
    if name == _TITLE or _EXTRA.fullmatch(name):
        return tuple(words.out_of(text, MOST_TITLE) for text in texts)
    return texts


def order_without(record: str, words: NameWords) -> str:
    """Return the record of an order without its buyer."""
    order = json.loads(record)
    order["order"] |= {"buyer": FORGOTTEN, "title": _short(order["order"]["title"], words)}
    order["order"].pop("notes", None)
    for extra in order.get("extras", ()):
        extra["what"] = _short(extra["what"], words)
    return json.dumps(order)


def offer_without(record: str, words: NameWords) -> str:
    """Return the record of an offer without its buyer."""
    offer = json.loads(record)
    extras = [_short(extra, words) for extra in offer.get("extras", ())]
    offer |= {"title": _short(offer["title"], words), "extras": extras}
    for extra in offer.get("left_out", ()):
        extra["what"] = _short(extra["what"], words)
    return json.dumps(offer | {"buyer": FORGOTTEN})


def results_without(record: str, words: NameWords) -> str:
    """Return the record of a quote's results without its buyer."""
    results = json.loads(record)
    head: dict[str, Any] = results["quote"]
    head |= {"buyer": FORGOTTEN, "title": _short(head["title"], words)}
    for line in results["price"]["lines"]:
        if line["kind"] == "extra":
            line["what"] = _short(line["what"], words)
    return json.dumps(results)


def page_without(page: str, offer: str, told: Told) -> str:
    """Return the page that a buyer was sent, with the words of an offer that has forgotten her."""
    written_in = _LANGUAGE.search(page)
    texts = told(read_offer(json.loads(offer)), written_in[1] if written_in else "")

    def renewed(place: re.Match[str]) -> str:
        return place[1] + escape(texts.get(place[2] or "drawing", FORGOTTEN))

    return _MARKED.sub(renewed, page)


def log_line_without(kind: str, record: str) -> str:
    """Return the record of a log's line without the words in it."""
    line, key = json.loads(record), _WORDS_IN_LOG.get(kind)
    if key is None or not line.get(key):
        return record
    return json.dumps(line | {key: FORGOTTEN})


def paper_without(record: str, words: NameWords) -> str:
    """Return the record of a paper without its buyer."""
    paper = json.loads(record)
    head: dict[str, Any] = paper["head"]
    head |= {"buyer": FORGOTTEN, "title": _short(head["title"], words)}
    return json.dumps(paper)


def _short(text: str, words: NameWords) -> str:
    return words.out_of(text, MOST_TITLE)
