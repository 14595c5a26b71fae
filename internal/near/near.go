// Package near finds the names that a mistyped word may have meant.
package near

import (
	"slices"
	"strings"
)

// Names returns up to three names that begin with the word or differ from it by a slip, the nearest first; none where
// nothing comes near.
func Names(word string, names []string) []string {
	word = strings.ToLower(word)
	allowed := 0 // with two of three letters wrong it is another word
	switch n := len(word); {
	case n < 2 || n > 40:
		return nil
	case n >= 6:
		allowed = 2
	case n >= 3:
		allowed = 1
	}
	far := map[string]int{}
	var near []string
	for _, name := range names {
		if !strings.HasPrefix(name, word) {
			far[name] = Slips(word, name)
		}
		if far[name] <= allowed {
			near = append(near, name)
		}
	}
	slices.SortStableFunc(near, func(a, b string) int { return far[a] - far[b] })
	return near[:min(len(near), 3)]
}

// Or joins names as a sentence does: "a, b or c".
func Or(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// Longest is how much of a text Slips compares, in bytes: more is nonsense or hostile.
const Longest = 48

// Slips counts the letters to add, drop, change or swap with the next that make a into b.
func Slips(a, b string) int {
	a, b = a[:min(len(a), Longest)], b[:min(len(b), Longest)]
	var before, row, next [Longest + 1]int
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		next[0] = i + 1
		for j := range len(b) {
			change := row[j] + 1
			if a[i] == b[j] {
				change = row[j]
			}
			next[j+1] = min(change, next[j]+1, row[j+1]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				next[j+1] = min(next[j+1], before[j-1]+1)
			}
		}
		before, row = row, next
	}
	return row[len(b)]
}
