"""Crowns made from numbers, for samples, tests and training."""
