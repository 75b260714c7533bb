"""Confirmed specimens: their file, their counts, and what these say of the shares."""
