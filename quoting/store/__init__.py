"""The maker's book: the workshop and the orders, kept in a file or on a server.

Nothing else in the program imports SQLAlchemy or Alembic, and they take their time to load: import
a module of this folder where a book is opened, not before.
"""
