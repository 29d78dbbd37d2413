"""The commands that a weaver types."""
