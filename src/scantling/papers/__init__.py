"""One file per paper, each rendering a finished setting-out."""
