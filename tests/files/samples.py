"""An order file with every key that there is, for tests to read and to spoil."""

from pathlib import Path

EVERY_KEY_OF_AN_ORDER = Path(__file__).with_name("every_key_of_an_order.toml")
ROWS = '{ colour = "teal", rows = 1 }'
STRIPE_ROWS = "blanket.sections.1.stripes.1.rows"
"""A stripe as that file writes it, and the place of its rows."""
