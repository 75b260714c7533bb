"""The room of the inbox: finds that were sent in, and what is decided on them."""
