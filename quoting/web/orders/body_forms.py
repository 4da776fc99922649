"""The parts of the order form that constructions have for their own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from wtforms import Form

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Yarn
from quoting.schema.blanket_shapes import BODIES
from quoting.web.forms.lines import part_of, typed_of
from quoting.web.orders.body_form import BodyForm, NewLine
from quoting.web.orders.centre_form import CENTRE_FORM
from quoting.web.orders.rows_form import ROWS_FORM
from quoting.web.orders.squares_form import SQUARES_FORM, squares_measured

FORMS: dict[type[Body], BodyForm] = {
    InRows: ROWS_FORM,
    FromCentre: CENTRE_FORM,
    JoinedSquares: SQUARES_FORM,
}
"""The form's part for each kind of body."""

_NEW_LINES: Mapping[str, NewLine] = {
    "border": {"stitch": "sc", "colour": "", "rounds": "1"},
    "colours": {"name": "", "yarn": "", "colour": ""},
    "extras": {"what": "", "cost": "", "minutes": ""},
}

_LINE_NAMES: Mapping[str, str] = {
    "border": "Border, part",
    "colours": "Colour from another yarn",
    "extras": "Extra",
}


@dataclass(frozen=True, slots=True)
class ChosenBody:
    """The construction that a form has chosen: its part of the form, and where its fields are."""

    part: BodyForm
    fields: Form

    @property
    def templates(self) -> str:
        """The folder of its templates."""
        return self.part.templates

    @property
    def size_hint(self) -> str:
        """What a size means of it; empty where width and length both count."""
        return self.part.size_hint(self.fields)

    @property
    def has_own_counts(self) -> bool:
        """Whether a count of the maker's own is typed."""
        return any(typed_of(self.fields, name).typed for name in self.part.own_counts)


def chosen_body(form: Form) -> ChosenBody:
    """Return the construction that an order form has chosen; where none, the first."""
    blanket = part_of(form, "blanket")
    word = blanket[BODIES.key].data or BODIES.first
    fields = blanket if word == BODIES.first else part_of(blanket, word)
    return ChosenBody(form_part(word), fields)


def form_part(word: str) -> BodyForm:
    """Return the form's part of the construction of a word."""
    return FORMS[BODIES.shapes[word].value]


def usual_construction(workshop: Workshop) -> str:
    """Return the word of what an empty form begins with: the first.

    Who measured no swatch, but a motif that can be joined, begins with squares.
    """
    squares = not workshop.swatches and squares_measured(workshop)
    body = JoinedSquares if squares else InRows
    return next(word for word, shape in BODIES.shapes.items() if shape.value is body)


def constructions() -> list[tuple[str, str]]:
    """Return the constructions that there are to choose from, each with its words."""
    return [(word, form_part(word).words) for word in BODIES.word.known]


def counts_template(body: Body) -> str:
    """Return the template that tells what a body comes to, and how that is reckoned."""
    return f"{FORMS[type(body)].templates}/counts.html"


def start_of_body(workshop: Workshop, yarn: Yarn, word: str = BODIES.first) -> Mapping[str, object]:
    """Return what an empty form begins with of a construction; without a word, of the first."""
    return form_part(word).start(workshop, yarn)


def new_lines() -> Mapping[str, NewLine]:
    """Return what a new line of each list begins with, by the end of its name.

    A blank colour takes the yarn's next.
    """
    lines = dict(_NEW_LINES)
    for part in FORMS.values():
        lines |= part.new_lines
    return lines


def line_names() -> Mapping[str, str]:
    """Return what a line of each list is called, by the end of its name."""
    names = dict(_LINE_NAMES)
    for part in FORMS.values():
        names |= part.line_names
    return names
