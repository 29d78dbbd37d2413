"""The next warp, planned from what the journal has learned: what to sley, weave, wind and buy."""
