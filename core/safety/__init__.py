"""Safety: what holds a workout, a round or a load back.

All of it informs and defers; doctors, physiotherapists and local rules decide.

- `screening`: from health answers to go, go light, clearance first, or wait
- `gate`: whether a workout may start now, the one answer that every way into a workout asks for
- `joints`: pain, what spares it, and what stays out or lighter until it is gone
- `day`: how much lighter today is, and why: screening, breaks, illness, easier weeks, how one feels
- `recovery`: breaks, illness, easier weeks, 48 hours for a muscle group
- `weeks`: training load of weeks, monotony, strain
- `signs`: stations failing in a row, reps falling by half
- `setting`: set-up checks and warm-up moves that fit a circuit

Each rule names its source by its entry in the list of published figures, or says that it is common practice.
"""
