"""From coats on the surface to the appearance after sintering."""
