"""How the tables of the book came to be as they are: one file for each version."""
