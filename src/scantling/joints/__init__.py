"""One file per joint, each answering the questions every joint answers."""
