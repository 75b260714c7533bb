"""What the forms of a guide ask for, as data: fields, their kinds, and their words."""
