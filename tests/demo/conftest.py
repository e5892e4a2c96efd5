"""Keeps the generators out of the search for doctests: they are scripts, run by hand from this folder's files."""

collect_ignore = ["lit_scene.py", "make_photos.py", "make_studies.py"]
