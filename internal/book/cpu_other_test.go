//go:build !unix

package book

import "time"

// cpu cannot be measured on this system.
func cpu() time.Duration { return 0 }
