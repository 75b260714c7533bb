"""What the subcommands do; `fieldid.calls` says how they are called."""
