"""Papers as pages: what the buyer reads, and what the maker works from."""
