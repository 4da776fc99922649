"""From cost to price."""
