"""Old records in, all records out: spreadsheets taken in, and the whole journal as tables and as one file."""
