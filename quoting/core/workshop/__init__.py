"""What the maker has measured or decided, whatever the order."""
