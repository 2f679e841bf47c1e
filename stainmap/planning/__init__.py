"""Reading a crown, proposing zones, laying out coats, judging the outcome, mixing."""
