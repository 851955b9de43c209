"""How it went: a trainee's week, strength with its spread, who needs a word, and what a coach or a trainee is told of it.

- `person`: somebody who is looked at
- `days`: what each day was
- `week`: sets, loads, effort, muscle groups of a week
- `strength`: up or down over four weeks, or not clear
- `flags`: who needs a word, and why
- `paper`: the sheet
- `telling`: the messages
"""
