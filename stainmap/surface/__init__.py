"""Triangle surfaces in millimetres: a library that knows nothing of what they are surfaces of."""
