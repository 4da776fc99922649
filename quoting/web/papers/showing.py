"""A paper as a page of its own."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Response, render_template
from markupsafe import Markup

from exports.papers.message import paper_text
from exports.papers.pdf import paper_pdf
from quoting.web.downloads import PDF, download
from quoting.web.turns import take_turn
from quoting.wording.locales import direction_of
from quoting.wording.paper import Block, Paper, Picture


@dataclass(frozen=True, slots=True, kw_only=True)
class Deeds:
    """Where the maker saves a paper as a PDF and, if it is for somebody else, has it as a message.

    `sent` is a form that is sent along, None where there is none.
    """

    pdf: str
    message: str = ""
    sent: tuple[tuple[str, str], ...] | None = None


def paper_page(paper: Paper, deeds: Deeds | None = None) -> str:
    """Return a paper as a page that a browser shows and prints.

    With `deeds` it has a bar of buttons above, which is for the maker's eyes and is not printed.
    """
    direction = direction_of(paper.language)
    seen = {"paper": paper, "direction": direction, "kind_of": kind_of, "drawn": drawn}
    if deeds is None:
        return render_template("papers/paper.html", **seen)
    told = {"deeds": deeds, "text": paper_text(paper) if deeds.message else ""}
    return render_template("papers/for_maker.html", **seen, **told)


def paper_file(paper: Paper, name: str) -> Response:
    """Return a paper as a PDF to be saved by a name. Errors: as `paper_pdf`, `take_turn`."""
    take_turn()
    return download(paper_pdf(paper), name, "pdf", PDF)


def message_page(paper: Paper, back: str) -> str:
    """Return a paper's plain text, to be copied into a message; `back` is where it belongs."""
    return render_template("papers/message.html", paper=paper, text=paper_text(paper), back=back)


def kind_of(block: Block) -> str:
    """Return the name of a block's kind, by which a template shows it."""
    return type(block).__name__.lower()


def drawn(picture: Picture) -> Markup:
    """Return a picture's drawing, which escapes every word that it writes."""
    return Markup(picture.svg)  # noqa: S704
