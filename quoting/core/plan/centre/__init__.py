"""One piece from its centre outwards."""
