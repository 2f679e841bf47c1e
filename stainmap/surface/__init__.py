"""Triangle surfaces in millimetres: a library that knows nothing of teeth."""
