"""The window. Only here is Qt imported."""
