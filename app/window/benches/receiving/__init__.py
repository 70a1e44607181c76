"""The door: cones come in by weight or by the list that came with them."""
