"""The trade: gauge, passes, strands, yarn, skeins, hours, price. Standard library only."""
