"""Findings: small pure functions from a bench to what a maker should know."""
