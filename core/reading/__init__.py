"""Reading what people text: a message in, acts out."""
