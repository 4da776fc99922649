"""An order while it is made, and what it took: written down, shown, taken into the workshop."""
