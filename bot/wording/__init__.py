"""Every word people read, one function a message."""
