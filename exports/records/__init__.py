"""Values as JSON can hold them."""
