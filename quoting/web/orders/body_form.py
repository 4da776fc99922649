"""What a construction adds to the order form and to its answer, beside its fields."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from wtforms import Field

from quoting.core.ground.place import Place

Fields: TypeAlias = Mapping[str, Field]
NewLine: TypeAlias = Mapping[str, str]


def beside_none(code: str, place: Place, fields: Fields) -> Sequence[Field] | None:
    """Return None: every mistake is told at its place."""
    del code, place, fields
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyForm:
    """The part of the form that a construction has for its own.

    `templates` is the folder of its `fields.html`, its `own_counts.html` and the `counts.html` of
    the answer; `own_counts` are its fields of the maker's own counts. Of each list in its shape
    `new_lines` has what a new line begins with, and `line_names` what a line is called. `start`
    is what a form begins with, for a colour of the yarn. `beside` gives the fields that a mistake
    is told beside where that is not the place of the mistake; `sums` are functions that templates
    call by their names.
    """

    templates: str
    start: Callable[[str], Mapping[str, object]]
    own_counts: tuple[str, ...] = ()
    new_lines: Mapping[str, NewLine]
    line_names: Mapping[str, str]
    beside: Callable[[str, Place, Fields], Sequence[Field] | None] = beside_none
    sums: tuple[Callable[..., object], ...] = ()
