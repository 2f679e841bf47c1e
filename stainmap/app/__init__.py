"""The open case, its history and its background work, without any window system."""
