"""What a plan takes: strands, yarn, skeins, hours."""
