"""A sale as a spreadsheet reckons it: the price that is solved, and what becomes of it."""
