"""Looking for a phrase of the health talk: the quick way finds what the plain way finds."""

from hypothesis import given
from hypothesis import strategies as st

from core.reading.whole_words import _alike, place_of

SAID = "no not sharp shrp sharpp slept badly slpet fever feverish chest chets 11 at 20kg . .. ok. tight"
WORDS = st.sampled_from(SAID.split(" "))
TEXTS = st.lists(WORDS, max_size=8).map(" ".join)
PHRASES = st.lists(WORDS.filter(lambda word: word.strip(".")), min_size=1, max_size=3).map(" ".join)


@given(said=TEXTS, phrase=PHRASES)
def test_a_phrase_is_found_where_its_words_stand(said, phrase):
    """Word by word from every place on, a slip in a longer word let pass."""
    words, wanted = [word.strip(".") for word in said.split()], phrase.split()
    places = range(len(words) - len(wanted) + 1)
    plainly = (at for at in places if all(_alike(words[at + i], word) for i, word in enumerate(wanted)))
    assert place_of(said, phrase) == next(plainly, None)
