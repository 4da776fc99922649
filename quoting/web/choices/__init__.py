"""The card of choices: two or three ways to make an order, on one page for its buyer."""
