"""Order and workshop files to values, with every mistake in them at once; orders to files."""

from quoting.intake.order_file import (
    read_order_file,
    read_order_table,
    read_order_text,
    write_order,
)
from quoting.intake.price_list import read_price_list_file, size_of
from quoting.intake.toml_text import check_file, load_file, load_toml
from quoting.intake.workshop_file import (
    read_workshop_file,
    read_workshop_table,
    read_workshop_text,
)

__all__ = [
    "check_file",
    "load_file",
    "load_toml",
    "read_order_file",
    "read_order_table",
    "read_order_text",
    "read_price_list_file",
    "read_workshop_file",
    "read_workshop_table",
    "read_workshop_text",
    "size_of",
    "write_order",
]
