"""The drawing font, the same on screen, in PDF and in tests: DejaVu Sans 2.37, unchanged.

Its licence lies beside it (DejaVu_LICENCE.txt) and lets it be bundled and embedded.
"""
