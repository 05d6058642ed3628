"""Dimensions bound to the numbers they show, and the drags that change them."""
