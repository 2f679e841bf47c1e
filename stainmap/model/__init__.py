"""The values of a case: frozen, checked when made, and ignorant of how anything is computed."""
