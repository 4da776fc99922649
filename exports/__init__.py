"""Documents made from a quote: values in, bytes or text out."""
