"""Forms made from shapes: fields that keep what was typed, and what they come to."""
