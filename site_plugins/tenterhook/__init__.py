"""The site of a journal, built by MkDocs. All that a page says comes from journal_tools."""
