"""The room of the guides: their list, and every page on which one is edited."""
