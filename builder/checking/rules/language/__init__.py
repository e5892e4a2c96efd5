"""Rules on languages and their translations."""
