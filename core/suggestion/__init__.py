"""The next load and tempo for one station, from the belief about strength and the loads in that house.

- `asks`: what is asked and what is answered
- `reasons`: why, as numbers
- `chances`: how a set with a given load and tempo would go
- `guards`: which steps are allowed
- `choose`: `suggest(ask)`
"""

from core.strength.evidence import PastSet
from core.strength.priors import TraineeFacts
from core.suggestion.asks import Ask, Spread, StationAsk, Suggestion
from core.suggestion.choose import suggest

__all__ = ["Ask", "PastSet", "Spread", "StationAsk", "Suggestion", "TraineeFacts", "suggest"]
