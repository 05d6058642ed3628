"""What stands around the sheet: job strip, story stick, parts, findings, papers, notices."""
