"""Words that rules look for in what engineers type: one table a file, by language."""
