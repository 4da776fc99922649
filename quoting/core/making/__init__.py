"""While a blanket is made, and after: progress, what is left, what it took, what is learnt."""
