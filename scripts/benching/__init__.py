"""What ``scripts/bench`` measures, a topic a module."""
