"""From guides to a bundle of static files that any web host can serve."""
