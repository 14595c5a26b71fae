package field

import (
	"errors"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Explain says of a value that could not be read what is wrong with it and what to type instead; ok is false for any
// other error.
func Explain(err error) (what, hint string, ok bool) {
	var typed *quantity.Error
	var unknown *tables.UnknownError
	switch {
	case errors.As(err, &typed):
		return typed.What, typed.Hint, true
	case errors.As(err, &unknown):
		return unknown.What(), unknown.Hint(), true
	}
	return "", "", false
}
