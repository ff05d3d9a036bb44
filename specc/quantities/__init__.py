"""Owns amounts: trims to cut, cloth, bill of materials, points of measure, demands met or not.

Knows nothing of paper. What a check needs of it is `measure`; a build needs `count`, which loads more.
"""
