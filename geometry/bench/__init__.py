"""Laying a bench out: from its numbers to its parts and joints."""
