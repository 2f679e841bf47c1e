"""Spectra, layered media and colour: a library that knows nothing of teeth."""
