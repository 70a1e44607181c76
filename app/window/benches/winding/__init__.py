"""The reel: cones come in, skeins go out on a disc."""
