"""What every stage stands on: mistakes and places, money, measures, cautions."""
