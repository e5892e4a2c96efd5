"""Breaks of the rules on languages."""

from __future__ import annotations
