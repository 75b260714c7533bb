"""From a table of a guide to its form, and from what was sent to a change of text."""
