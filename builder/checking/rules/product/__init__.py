"""Rules about a product, one a file."""
