"""Finds that were sent in from phones: read without trust, kept, and decided on."""
