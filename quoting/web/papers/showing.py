"""A paper as a page of its own."""

from __future__ import annotations

from flask import render_template
from markupsafe import Markup

from quoting.wording.paper import Block, Paper, Picture


def paper_page(paper: Paper) -> str:
    """Return a paper as a page that a browser shows and prints."""
    return render_template("papers/paper.html", paper=paper, kind_of=kind_of, drawn=drawn)


def kind_of(block: Block) -> str:
    """Return the name of a block's kind, by which a template shows it."""
    return type(block).__name__.lower()


def drawn(picture: Picture) -> Markup:
    """Return a picture's drawing, which escapes every word that it writes."""
    return Markup(picture.svg)  # noqa: S704
