package calc

import (
	"errors"
	"fmt"
)

// ErrRange is wrapped by every formula that is asked outside its range.
var ErrRange = errors.New("outside the formula's range")

// FieldError is a Job that cannot be computed: which field, what it holds, what would be accepted.
type FieldError struct {
	Field  string // the Job's JSON name
	Value  string // safe to print
	Accept string // what to type instead
}

func (e *FieldError) Error() string {
	return fmt.Sprintf("%s %s cannot be used", e.Field, e.Value)
}

// Hint says what would be accepted.
func (e *FieldError) Hint() string { return e.Accept }
