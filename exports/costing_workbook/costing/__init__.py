"""The sheet of the costing: costs, terms, the price that follows, and where it goes."""
