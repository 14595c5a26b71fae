package book

import "strconv"

func itoa(n int) string { return strconv.Itoa(n) }

// short is a number in the few digits that a list needs.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }
