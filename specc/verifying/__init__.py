"""Owns holding a sheet against the source that is enclosed in it.

Knows nothing of the terminal, and writes nothing.
"""
