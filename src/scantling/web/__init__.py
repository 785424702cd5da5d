"""The page: its interface over HTTP and its built files."""
