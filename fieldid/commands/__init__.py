"""What the subcommands do; `fieldid.cli` says how they are called."""
