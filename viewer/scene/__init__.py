"""From state to VTK."""
