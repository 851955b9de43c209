"""What holds for any input at all."""
