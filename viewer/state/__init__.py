"""What is shown, as plain values; no Qt, no VTK."""
