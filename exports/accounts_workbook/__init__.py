"""The finished orders and all money received, as one workbook for the accounts."""

from __future__ import annotations

from exports.accounts_workbook.accounts import Accounts, Booked, Received

__all__ = ["Accounts", "Booked", "Received", "accounts_bytes"]


def accounts_bytes(accounts: Accounts) -> bytes:
    """Return the accounts as a workbook. Errors: as `speech_of`."""
    from exports.accounts_workbook.book import write_accounts  # it loads the spreadsheet library

    return write_accounts(accounts)
