"""Text to number, measure and money, and back. Nothing is ever misread in silence."""

from quoting.notation.marks import FILE_MARKS, Marks
from quoting.notation.measures import LENGTH, MASS, YARN_LENGTH, Quantity, read_measure
from quoting.notation.numbers import read_money, read_number, without_sign
from quoting.notation.sizes import read_size
from quoting.notation.stripe_lines import (
    read_stripe_lines,
    split_line,
    stripe_line,
    written_part,
)
from quoting.notation.writing import write_measure, write_number

__all__ = [
    "FILE_MARKS",
    "LENGTH",
    "MASS",
    "YARN_LENGTH",
    "Marks",
    "Quantity",
    "read_measure",
    "read_money",
    "read_number",
    "read_size",
    "read_stripe_lines",
    "split_line",
    "stripe_line",
    "without_sign",
    "write_measure",
    "write_number",
    "written_part",
]
