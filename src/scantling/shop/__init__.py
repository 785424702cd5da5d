"""The workshop: tools and their reach, what they hold, the words of the work, habits."""
