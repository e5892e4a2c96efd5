"""The art of the safety signs: grounds by kind, pictograms by code.

Not for use from elsewhere: the door is `builder.drawing.sign`.
"""
