"""The rule book: one rule a file, by the noun it is about."""
