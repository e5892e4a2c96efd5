"""Rules about a plant, one a file."""
