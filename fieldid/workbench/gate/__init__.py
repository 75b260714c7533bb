"""Who comes in, how much is taken from them, and what is answered to the others."""
