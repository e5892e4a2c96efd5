"""Rules about a station, one a file."""
