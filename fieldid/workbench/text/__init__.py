"""The text of a guide as a page opens it: its tables, its mistakes, and its changes."""
