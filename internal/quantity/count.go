package quantity

import "strconv"

// Count is a number of things in words: "1 reading", "3 readings".
func Count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
