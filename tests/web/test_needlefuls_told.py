"""Needlefuls of sewn joins, told as a maker does: their yarn comes to its end, nothing is cut."""

from __future__ import annotations

import pytest

from exports.drawing.tables import drawing_table
from quoting.cli.quote_table import quote_table
from quoting.core.estimate.strands import Why
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.quote import Quote
from quoting.web.orders.reckonings import ends_words
from tests.constructed import constructed_quote, squares
from tests.wording.speeches import UK_NAMES

SEAMS, NEEDLEFULS = 17, 41
"""Of 8 by 11 squares: 7 seams of three needlefuls, and 10 of two."""


def joined(method: JoinMethod) -> Quote:
    body = squares(method, columns=8, rows=11)
    return constructed_quote(body, border=())


@pytest.mark.parametrize("method", [JoinMethod.WHIPSTITCH, JoinMethod.MATTRESS])
def test_needlefuls_that_end_within_a_seam_are_not_said_to_be_cut(method: JoinMethod) -> None:
    quote = joined(method)
    within = NEEDLEFULS - SEAMS
    said = ends_words(quote, UK_NAMES)
    cut = quote.estimate.ended(Why.CUT) - within
    assert f"{cut} cut as the colour changes, {within} where a needleful ends within" in said
    told = " ".join(quote_table(quote).replace("\u00a0", " ").split())
    assert f"Needleful ends in a seam {within} times" in told
    whys = {row.why for row in drawing_table(quote, UK_NAMES) if "needleful" in row.ends}
    assert whys == {"needleful at its end", "fastened off"}


def test_where_nothing_is_sewn_no_needleful_is_told() -> None:
    quote = joined(JoinMethod.SINGLE_CROCHET)
    assert "needleful" not in ends_words(quote, UK_NAMES)
    assert "eedleful" not in quote_table(quote)
