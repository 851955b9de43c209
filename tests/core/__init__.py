"""The core: plain functions over values, and the replies that it is measured by."""
