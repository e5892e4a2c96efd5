"""Rules about a material, one a file."""
