"""Rules about a operation, one a file."""
