"""The papers of an order: receipts, bills and batch records, each as the facts were that day."""
