"""Programs that measure. None is a test: a timing is never asserted."""
