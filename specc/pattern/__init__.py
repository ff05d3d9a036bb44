"""Owns pattern pieces as frozen values and what is measured on them; knows nothing of charts, blocks, seams or paper."""
