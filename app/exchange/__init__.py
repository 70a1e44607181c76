"""What comes in and goes out: delivery notes and lists."""
