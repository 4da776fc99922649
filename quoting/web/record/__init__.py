"""How good the quotes were: what finished orders say of them, and the accounts."""
