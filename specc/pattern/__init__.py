"""Owns pattern pieces as frozen values and what is measured on them; knows no blocks, seams, paper."""
