"""What a guide is worth in use: specimens drawn from it, judged as somebody would."""
