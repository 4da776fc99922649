"""Forms within a form, named by their places: `blanket.sections.2.stripes.1.rows`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, cast

from wtforms import Field, Form
from wtforms.utils import unset_value

from quoting.web.fields import Typed

MOST_PARTS = 8
MOST_NUMBER_LENGTH = 6


def is_number(part: str) -> bool:
    """Return whether a part of a name is the number of a line."""
    return part.isascii() and part.isdigit() and len(part) <= MOST_NUMBER_LENGTH


def line_numbers(names: Iterable[str]) -> dict[str, list[int]]:
    """Return the numbers that the lines of each list bear, in order, by the list's name.

    Nothing is dropped: a list that is too long is the core's to refuse.
    """
    found: dict[str, set[int]] = {}
    for name in names:
        parts = name.split(".", MOST_PARTS)
        for at, part in enumerate(parts):
            if is_number(part):
                found.setdefault(".".join(parts[:at]), set()).add(int(part))
    return {name: sorted(numbers) for name, numbers in found.items()}


class Part(Field):
    """One form inside another."""

    form: Form

    def __init__(self, form_class: type[Form], **kwargs: Any) -> None:
        super().__init__("", **kwargs)
        self.form_class = form_class

    def process(self, formdata: Any, data: Any = unset_value, extra_filters: Any = None) -> None:
        """Bind the inner form to what was sent, or to a mapping of values."""
        del extra_filters
        values = {} if data is unset_value or data is None else data
        self.form = self.form_class(
            formdata, data=values, prefix=f"{self.name}.", meta=_shared(self.meta)
        )

    @property
    def data(self) -> Mapping[str, Any]:
        """The inner form's values."""
        return self.form.data


class Lines(Field):
    """A list of like forms, numbered from 1."""

    entries: list[Form]
    says: tuple[str, ...] = ()

    def __init__(self, form_class: type[Form], label: str = "", **kwargs: Any) -> None:
        super().__init__(label, **kwargs)
        self.form_class = form_class

    def process(self, formdata: Any, data: Any = unset_value, extra_filters: Any = None) -> None:
        """Bind a form to each line sent, or to each of a sequence of values."""
        del extra_filters
        values: Sequence[Any] = () if data is unset_value or data is None else data
        if formdata is not None:
            numbers = self.meta.lines.get(self.name, [])
            self.entries = [self._entry(number, formdata, {}) for number in numbers]
        else:
            self.entries = [self._entry(nr, None, value) for nr, value in enumerate(values, 1)]

    def _entry(self, number: int, formdata: Any, values: Mapping[str, Any]) -> Form:
        prefix = f"{self.name}.{number}."
        return self.form_class(formdata, data=values, prefix=prefix, meta=_shared(self.meta))

    @property
    def data(self) -> list[Mapping[str, Any]]:
        """The values of every line."""
        return [entry.data for entry in self.entries]


def _shared(meta: Any) -> dict[str, Any]:
    return {"shop": meta.shop, "lines": meta.lines}


def fields_by_place(form: Form, place: str = "") -> Iterator[tuple[str, Field]]:
    """Yield every field with its place, lines counted as they stand."""
    for field in form:
        at = f"{place}{field.short_name}"
        yield at, field
        if isinstance(field, Part):
            yield from fields_by_place(field.form, f"{at}.")
        elif isinstance(field, Lines):
            for number, entry in enumerate(field.entries, 1):
                yield from fields_by_place(entry, f"{at}.{number}.")


def typed_of(form: Form, name: str) -> Typed:
    """Return a field that holds text."""
    return cast("Typed", form[name])


def entries_of(form: Form, name: str) -> list[Form]:
    """Return the forms of a list."""
    return cast("Lines", form[name]).entries


def part_of(form: Form, name: str) -> Form:
    """Return a form inside a form."""
    return cast("Part", form[name]).form
