"""Small widgets that several benches use."""
