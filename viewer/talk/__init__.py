"""The instructor's talk: scenes, presenting, rapid review. Plain state; Qt stays in the panels."""
