"""The coach's side: a circuit or a plan typed in the chat, looked at, put in force with a yes, taken back with an undo.

`desk` is what a coach's step rests on and what it may change, `states` where the talk is, `typing` what coaches type, `showing`
what they are shown, `step` the decision.
"""
