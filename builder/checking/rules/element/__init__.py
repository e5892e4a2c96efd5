"""Rules about an element of the plant's table of times, one a file."""
