"""stainmap: plans the staining of milled zirconia crowns and bridges."""

__version__ = "0.1.0"
