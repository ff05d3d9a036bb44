"""Owns the technical sheet as plain data: pages of finished cells and of drawings in paper millimetres.

Knows nothing of HTML, PDF or any other format: a backend only has to write the document down.
"""
