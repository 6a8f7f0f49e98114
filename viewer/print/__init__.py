"""Things to print: plates and sheets."""
