"""Rules about a study, one a file."""
