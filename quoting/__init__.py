"""Costs and quotes a hand-crocheted blanket that is made to order."""
