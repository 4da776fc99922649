"""A quote as the worktable shows it: drawing, cautions in their places, how it was reckoned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from markupsafe import Markup

from exports.drawing import RowsRow, StrandRow, draw_blanket, drawing_table, rows_table
from exports.drawing.tables import colour_codes
from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Task
from quoting.core.ground.cautions import Reader
from quoting.core.price.cost_lines import Line, LineKind
from quoting.core.price.price import ADJUSTMENTS
from quoting.core.quote.quote import Quote
from quoting.web.shop import Shop
from quoting.wording import Speech, caution_sentence
from quoting.wording.caution_places import SAID_AT


@dataclass(frozen=True, slots=True, kw_only=True)
class PartHours:
    """The hours of one part of the work, and its tasks."""

    part: Part
    hours: Decimal
    tasks: tuple[Task, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """A quote as its maker sees it; `cautions` are hers, by the part of the page they go to."""

    quote: Quote
    say: Speech
    drawing: Markup
    cautions: Mapping[str, tuple[str, ...]]
    for_buyer: tuple[str, ...]
    codes: Mapping[str, str]

    @property
    def strands(self) -> tuple[StrandRow, ...]:
        """Every strand of the drawing, in words."""
        return drawing_table(self.quote, self.say)

    @property
    def rows(self) -> tuple[RowsRow, ...]:
        """The rows and rounds of the drawing, by runs of one colour."""
        return rows_table(self.quote)

    @property
    def parts(self) -> tuple[PartHours, ...]:
        """The hours by part."""
        hours = self.quote.estimate.hours
        return tuple(
            PartHours(
                part=part,
                hours=hours.of(part),
                tasks=tuple(task for task in hours.tasks if task.part is part),
            )
            for part in Part
            if hours.of(part)
        )

    @property
    def costs(self) -> tuple[Line, ...]:
        """The lines that add up to the cost."""
        moves = {*ADJUSTMENTS, LineKind.FEE}
        return tuple(line for line in self.quote.lines if line.kind not in moves)

    @property
    def fees(self) -> tuple[Line, ...]:
        """The lines that add up to the fees."""
        return tuple(line for line in self.quote.lines if line.kind is LineKind.FEE)

    @property
    def moves(self) -> tuple[Line, ...]:
        """The lines that move the price: rush, discount, minimum."""
        return tuple(line for line in self.quote.lines if line.kind in ADJUSTMENTS)


def view_of(quote: Quote, shop: Shop) -> View:
    """Return a quote ready to be shown to its maker."""
    placed: dict[str, list[str]] = {}
    for caution in quote.cautions:
        if caution.reader is Reader.MAKER:
            placed.setdefault(SAID_AT[caution.code], []).append(
                caution_sentence(caution, shop.speech)
            )
    return View(
        quote=quote,
        say=shop.speech,
        # The drawing escapes every word that it writes.
        drawing=Markup(draw_blanket(quote, shop.speech)),  # noqa: S704
        cautions={place: tuple(said) for place, said in placed.items()},
        for_buyer=tuple(
            caution_sentence(caution, shop.speech)
            for caution in quote.cautions
            if caution.reader is Reader.BUYER
        ),
        codes=colour_codes(quote),
    )
