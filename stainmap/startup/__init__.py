"""What bootstrap needs to make an environment; the standard library only."""
