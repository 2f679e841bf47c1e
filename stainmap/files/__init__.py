"""Case files, catalogue files, exports: everything that is written to disk or read from it."""
