"""How long a quote takes as a PDF, against its page in the same run.

Run from the project's folder as `python -m tests.benchmarks.paper_pdf`. The first PDF, which starts
the typesetter and has it look for fonts, is told alone; then page and PDF are made by turns.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace
from statistics import median

from exports.papers.offers import quote_paper
from exports.papers.pdf import paper_pdf
from quoting.core.quote.quote import quote_order
from quoting.places import demo_order, demo_workshop
from quoting.schema import load_order, load_workshop
from quoting.web import create_app
from quoting.web.papers.showing import paper_page
from quoting.web.shop import open_shop
from quoting.wording.paper import Paper
from tests.examples import (
    TODAY,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    section,
)

TURNS = 40
ROWS, COLOURS = 300, ("teal", "rust", "oat")


def main() -> None:
    """Print how long the first PDF took, and for each quote the medians and their ratio."""
    demo, long = _demo(), _long()
    print(f"first PDF, with its fonts: {_milliseconds(lambda: paper_pdf(demo)):.0f} ms")
    app = create_app(open_shop(sample_workshop(), today=lambda: TODAY))
    with app.test_request_context():
        _say("the demo's quote", demo)
        _say(f"a quote of {ROWS} rows", long)


def _demo() -> Paper:
    workshop = load_workshop(demo_workshop())
    return quote_paper(quote_order(load_order(demo_order(), workshop), workshop, today=TODAY))


def _long() -> Paper:
    sections = (section(*COLOURS, repeats=ROWS // len(COLOURS)),)
    return quote_paper(sample_quote(sample_order(design=sample_design(sections=sections))))


def _say(what: str, paper: Paper) -> None:
    """Print the medians of a paper; each turn has another title, so that nothing is remembered."""
    turns = [
        (
            _milliseconds(lambda paper=named: paper_page(paper)),
            _milliseconds(lambda paper=named: paper_pdf(paper)),
        )
        for named in (replace(paper, title=f"Turn {turn}") for turn in range(TURNS))
    ]
    page, pdf = (median(times) for times in zip(*turns, strict=True))
    print(f"{what}: page {page:.1f} ms, PDF {pdf:.1f} ms, ratio {pdf / page:.1f}")


def _milliseconds(call: Callable[[], object]) -> float:
    begun = time.perf_counter()
    call()
    return (time.perf_counter() - begun) * 1000


if __name__ == "__main__":
    main()
