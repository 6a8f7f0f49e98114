"""Distance fields, taut sheets, fascicle bundles and tubes; knows no anatomy."""
