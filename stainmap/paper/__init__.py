"""Pictures and sheets for the bench, drawn without any window system."""
