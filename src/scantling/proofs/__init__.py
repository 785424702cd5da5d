"""One file per proof, each returning findings."""
