"""Rules about a template, one a file."""
