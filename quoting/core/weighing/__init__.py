"""Orders held against one another: sizes, budgets, calmer stripes."""
