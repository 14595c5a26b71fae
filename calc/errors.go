package calc

import (
	"errors"
	"strings"
)

// ErrRange is wrapped by every formula that is asked outside its range.
var ErrRange = errors.New("outside the formula's range")

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
