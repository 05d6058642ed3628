"""Drawing sheets composed of marks: general arrangement, part sheets, templates."""
