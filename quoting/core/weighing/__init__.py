"""Orders held against one another: sizes, budgets, calmer stripes, the next smaller and larger."""
