"""The walk through a workout, and all the talk around it: one message or one alarm in, one step out.

`states` says where a conversation can be, `step` decides. The order to read: `states`, `step`, then one file a subject.
"""
