"""The worktable: an order, its answer, and what is made of it."""
