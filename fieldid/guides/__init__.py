"""Reading and writing files: guides in TOML, finds and verdicts in JSON."""
