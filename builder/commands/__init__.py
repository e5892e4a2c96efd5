"""Door of the room."""
