"""A paper as a page of its own."""

from __future__ import annotations

from dataclasses import dataclass

from flask import render_template
from markupsafe import Markup

from exports.papers.message import paper_text
from quoting.wording.paper import Block, Paper, Picture


@dataclass(frozen=True, slots=True, kw_only=True)
class Deeds:
    """Where the maker saves a paper as a PDF and has it as a message; `sent` is sent along."""

    pdf: str
    message: str
    sent: tuple[tuple[str, str], ...]


def paper_page(paper: Paper, deeds: Deeds | None = None) -> str:
    """Return a paper as a page that a browser shows and prints.

    With `deeds` it has a bar of buttons above, which is for the maker's eyes and is not printed.
    """
    seen = {"paper": paper, "kind_of": kind_of, "drawn": drawn}
    if deeds is None:
        return render_template("papers/paper.html", **seen)
    told = {"deeds": deeds, "text": paper_text(paper)}
    return render_template("papers/for_maker.html", **seen, **told)


def message_page(paper: Paper, back: str) -> str:
    """Return a paper's plain text, to be copied into a message; `back` is where it belongs."""
    return render_template("papers/message.html", paper=paper, text=paper_text(paper), back=back)


def kind_of(block: Block) -> str:
    """Return the name of a block's kind, by which a template shows it."""
    return type(block).__name__.lower()


def drawn(picture: Picture) -> Markup:
    """Return a picture's drawing, which escapes every word that it writes."""
    return Markup(picture.svg)  # noqa: S704
