"""The next load and tempo for one station, from the belief about strength and the loads in that house.

- `asks`: what is asked and what is answered
- `reasons`: why, as numbers
- `chances`: how a set with a given load and tempo would go
- `guards`: which steps are allowed
- `explain`: which reason fits a choice
- `choose`: `suggest(ask)`, and `load_costs(ask)` for planning a whole circuit
- `trend`: the one-rep max over the weeks
"""

from core.strength.evidence import PastSet
from core.strength.priors import TraineeFacts
from core.suggestion.asks import Ask, Spread, StationAsk, Suggestion
from core.suggestion.choose import load_costs, suggest
from core.suggestion.trend import TrendPoint, trend

__all__ = ["Ask", "PastSet", "Spread", "StationAsk", "Suggestion", "TraineeFacts", "TrendPoint", "load_costs", "suggest", "trend"]
