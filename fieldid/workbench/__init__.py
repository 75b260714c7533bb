"""The workbench: where the author of guides writes them, and looks after them."""
