"""Finds judged under a guide as it is, and as an edit would leave it."""
