// Package near suggests names for a mistyped word.
package near

import (
	"slices"
	"strings"
)

// Names returns up to three names that begin with the word or are spelt nearly like it, the nearest first.
func Names(word string, names []string) []string {
	word = strings.ToLower(word)
	allowed := 0 // in a short word two wrong letters are too many
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

// Longest is how many bytes of a text Slips compares: a longer one is nonsense or hostile.
const Longest = 48

// Slips is the number of letters to insert, delete, replace or swap with the next one to turn a into b (edit distance).
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
