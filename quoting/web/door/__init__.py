"""The door: who is let in to the pages of a book that has a passphrase."""
