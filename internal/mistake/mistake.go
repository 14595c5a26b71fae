// Package mistake is the error about input or a choice: what is wrong, and what to type instead.
package mistake

import (
	"errors"
	"strings"
)

// Error is a mistake in one choice of a job, or in any other input.
type Error struct {
	Field string // the job's choice, by its JSON name; "" for anything else
	What  string // what is wrong; with a Field it follows the choice's name
	Hint  string // what to type instead; "" if unknown
	Cause error  // underlying error; nil if only the typed text is wrong
}

// Error says what is wrong, after the choice's name if there is one.
func (e *Error) Error() string {
	if e.Field == "" {
		return e.What
	}
	return strings.ReplaceAll(e.Field, "_", " ") + ": " + e.What
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }

// New is a mistake in anything but a job's choice.
func New(what, hint string) error { return &Error{What: what, Hint: hint} }

// In is a mistake in a choice of a job; field is its JSON name.
func In(field, what, hint string) error { return &Error{Field: field, What: what, Hint: hint} }

// Of finds the mistake in an error; nil if there is none.
func Of(err error) *Error {
	e, _ := errors.AsType[*Error](err)
	return e
}

// Within puts the place of the input, such as a flag or a file, before a mistake, in place of the choice's name. Any
// other error is returned unchanged.
func Within(place string, err error) error {
	e := Of(err)
	if e == nil {
		return err
	}
	return &Error{What: place + ": " + e.What, Hint: e.Hint, Cause: e.Cause}
}
