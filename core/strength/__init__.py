"""How strong a trainee is, as a belief with a spread, learned from sets that mostly end with the clock.

- `curve`: repetitions against load
- `priors`: what to expect of an exercise before it was ever done
- `evidence`: set records as numbers in columns
- `belief`: strength, day form, curve, fatigue and habits of one trainee, learned together
"""
