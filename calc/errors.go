package calc

import "strings"

// FieldError is a Job that cannot be computed: which field, what is wrong with it, what would be accepted.
type FieldError struct {
	Field  string // the Job's JSON name
	What   string // is wrong, as a clause behind the field's name; safe to print
	Accept string // what to type instead
}

func (e *FieldError) Error() string {
	return strings.ReplaceAll(e.Field, "_", " ") + ": " + e.What
}

// Hint says what would be accepted.
func (e *FieldError) Hint() string { return e.Accept }
