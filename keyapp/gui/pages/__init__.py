"""One screen each."""
