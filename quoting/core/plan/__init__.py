"""The order unrolled into passes: every row and round, in the order worked."""
