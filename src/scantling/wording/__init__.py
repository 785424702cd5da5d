"""Trade words as they are said in the maker's country, from one list."""

from scantling.wording.speech import Speech, pairs, spoken, word

__all__ = ["Speech", "pairs", "spoken", "word"]
