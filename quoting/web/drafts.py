"""Reading a form into values, so that every mistake is found at once and none that only follows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from typing import Any, TypeVar

from wtforms import Form

from quoting.core.design import BorderBand, Design, Section, Stripe
from quoting.core.errors import MORE, Mistake, Refused, Tally
from quoting.core.order import Extra, Order, Terms
from quoting.core.terms import Target
from quoting.web.lines import entries_of, part_of, typed_of

T = TypeVar("T")

_STRIPE = Stripe(colour="-")
_SECTION = Section(stripes=(_STRIPE,))
_STAND_INS: Mapping[type[Any], Mapping[str, Any]] = {
    Stripe: {"colour": "-", "rows": 1, "stitch": None},
    Section: {"stripes": (_STRIPE,), "share": None, "repeats": None},
    BorderBand: {"stitch": "-", "colour": "-", "rounds": 1, "row_end_ratio": None},
    Extra: {"what": "-", "cost": Decimal(0), "minutes": 0.0, "yarn_m": 1.0, "colour": "-"},
    Target: {"margin": 0.0, "markup": None, "given": None},
    Terms: {"discount": 0.0, "rush": 0.0},
    Design: {
        "width_cm": 1.0,
        "height_cm": 1.0,
        "stitch": "-",
        "yarn": "-",
        "stitches": None,
        "multiple": None,
        "plus": None,
        "first_rows": (),
        "last_rows": (),
        "sections": (_SECTION,),
    },
    Order: {
        "title": "-",
        "buyer": "",
        "notes": "",
        "deliver_to": None,
        "quantity": 1,
        "pays_in": None,
    },
}
"""What takes the place of a value that is refused, so that the rest is checked all the same."""

_NAMED_OTHERWISE = {"width": "width_cm", "height": "height_cm", "metres": "yarn_m"}


class Notes:
    """The mistakes of one form, each once; none at, or inside, a place that has one already."""

    def __init__(self) -> None:
        self._tally = Tally()
        self._closed: set[str] = set()

    @property
    def mistakes(self) -> tuple[Mistake, ...]:
        """What was noted so far."""
        return self._tally.mistakes

    def keep(self, mistakes: Iterable[Mistake], place: str = "") -> None:
        """Note the mistakes of one value, their places inside `place`."""
        found = [mistake.under(place) for mistake in mistakes]
        fresh = [m for m in found if m.code == MORE or not self._is_closed(m.place)]
        for mistake in fresh:
            self._tally.add(mistake)
        self._closed.update(mistake.place for mistake in fresh)

    def close(self, place: str) -> None:
        """Take no more mistakes at a place: what is there is a stand-in."""
        self._closed.add(place)

    def done(self) -> None:
        """Raise one refusal if anything was noted."""
        self._tally.done()

    def _is_closed(self, place: str) -> bool:
        while place and place not in self._closed:
            place = place.rpartition(".")[0]
        return bool(place)


class Sheet:
    """One form, with its place in the order file."""

    def __init__(self, form: Form, notes: Notes, place: str = "") -> None:
        self.form = form
        self.notes = notes
        self.place = place

    def part(self, name: str) -> Sheet:
        """Return a form inside this one."""
        return Sheet(part_of(self.form, name), self.notes, self._at(name))

    def lines(self, name: str) -> Iterator[Sheet]:
        """Yield the forms of a list, their places counted from 1."""
        for number, entry in enumerate(entries_of(self.form, name), 1):
            yield Sheet(entry, self.notes, f"{self._at(name)}.{number}")

    def may(self, name: str, stand_in: Any = None) -> Any:
        """Return a field's value; the stand-in where it is blank or cannot be read."""
        field = typed_of(self.form, name)
        if field.mistake is not None:
            self.wrong(name, field.mistake.code, **field.mistake.facts)
        return stand_in if field.data is None else field.data

    def need(self, name: str, stand_in: Any) -> Any:
        """Return a field's value, as `may`; it is a mistake to leave it blank."""
        field = typed_of(self.form, name)
        if field.data is None and field.mistake is None:
            self.wrong(name, "missing")
        return self.may(name, stand_in)

    def wrong(self, name: str, code: str, **facts: Any) -> None:
        """Note a mistake of one field."""
        self.notes.keep([Mistake(self._at(name), code, facts)])

    def build(self, kind: type[T], **values: Any) -> T:
        """Return a value of that kind, what is refused of it noted and replaced."""
        try:
            return kind(**values)
        except Refused as refused:
            self.notes.keep(refused.mistakes, self.place)
            stand_ins = _STAND_INS[kind]
            wrong = {_field_named(mistake.place) for mistake in refused.mistakes}
            kept = {} if kind is Target else values
            return kind(**(kept | {n: v for n, v in stand_ins.items() if n in wrong or not kept}))

    def _at(self, name: str) -> str:
        return f"{self.place}.{name}" if self.place else name


def _field_named(place: str) -> str:
    """Return the field that the last part of a place is about."""
    name = place.rpartition(".")[2]
    return _NAMED_OTHERWISE.get(name, name)
