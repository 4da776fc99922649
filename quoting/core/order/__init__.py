"""What a buyer asks."""
