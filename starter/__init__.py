"""What start.py does: make an environment, serve the journal, run the checks. Standard library only."""
