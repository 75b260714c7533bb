"""How each command is called: a module a command, with what it does and its options."""
