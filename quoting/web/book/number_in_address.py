"""Numbers as a part of an address: of a quote, `2026-014` or `2026-014/2`, and of a row."""

from __future__ import annotations

from werkzeug.routing import BaseConverter, IntegerConverter, Map, ValidationError

from quoting.core.quote.given_number import GivenNumber, read_number

MOST_ROWS = 2**31 - 1
"""To which every database counts its rows."""


class RowInAddress(IntegerConverter):
    """Reads the number of an order, or of another row, as far as any database counts."""

    def __init__(self, url_map: Map) -> None:
        super().__init__(url_map, max=MOST_ROWS)


class NumberInAddress(BaseConverter):
    """Reads and writes the number; `2026-014/1` is `2026-014`, too."""

    regex = r"\d{4}-\d{3,9}(?:/\d{1,6})?"
    part_isolating = False

    def to_python(self, value: str) -> GivenNumber:
        """Return the number. Errors: ValidationError where it is none."""
        number = read_number(value)
        if number is None:
            raise ValidationError
        return number

    def to_url(self, value: GivenNumber) -> str:
        """Return the number as an address has it."""
        return str(value)
