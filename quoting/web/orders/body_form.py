"""What a construction adds to the order form and to its answer, beside its fields."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from wtforms import Field, Form

from quoting.core.ground.place import Place
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Yarn
from quoting.web.forms.line_changes import Changed
from quoting.web.forms.sent import Sent

Fields: TypeAlias = Mapping[str, Field]
NewLine: TypeAlias = Mapping[str, str]


def beside_none(code: str, place: Place, fields: Fields) -> Sequence[Field] | None:
    """Return None: every mistake is told at its place."""
    del code, place, fields
    return None


def no_deed(deed: str, sent: Sent, workshop: Workshop) -> Changed:
    """Return the form as it was sent: it has no buttons of its own."""
    del deed, workshop
    return Changed(sent, "")


def none_rest(sent: Sent) -> Collection[str]:
    """Return none: all fields of such a body count."""
    del sent
    return ()


def no_size_hint(fields: Form) -> str:
    """Return nothing: width and length both count."""
    del fields
    return ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyForm:
    """The part of the form that a construction has for its own.

    `words` name it among the others: how such a blanket is worked. `templates` is the folder of its
    `fields.html`, its `own_counts.html` and the `counts.html` of the answer; `own_counts` are its
    fields of the maker's own counts. Of each list in its shape, by the end of its name, `new_lines`
    has what a new line begins with, and `line_names` what a line is called. `start` is what a form
    begins with, for a workshop and one of its yarns. `takes_over` are keys of every blanket that
    such a body says itself. `deed` does what buttons of its own ask. `rests` names its own fields
    that count for nothing beside what else is typed: they are not asked, and what was typed there
    comes back when they do. `size_hint` tells what a size means of it. `beside` gives the fields
    that a mistake is told beside where that is not the place of the mistake; `sums` are functions
    that templates call by their names.
    """

    words: str
    templates: str
    start: Callable[[Workshop, Yarn], Mapping[str, object]]
    own_counts: tuple[str, ...] = ()
    takes_over: tuple[str, ...] = ()
    new_lines: Mapping[str, NewLine]
    line_names: Mapping[str, str]
    deed: Callable[[str, Sent, Workshop], Changed] = no_deed
    rests: Callable[[Sent], Collection[str]] = none_rest
    size_hint: Callable[[Form], str] = no_size_hint
    beside: Callable[[str, Place, Fields], Sequence[Field] | None] = beside_none
    sums: tuple[Callable[..., object], ...] = ()
