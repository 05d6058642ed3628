"""The drawing sheet on the screen: it paints marks and turns the hand into deeds."""
