"""Rules about a part, one a file."""
