package formula

import "errors"

// ErrRange is wrapped by every formula that is asked outside its range.
var ErrRange = errors.New("outside the formula's range")
