// Package near finds the names that a mistyped word may have meant.
package near

import (
	"slices"
	"strings"
)

// Names returns up to three names that begin with the word or differ from it by a slip, the nearest first;
// none where nothing comes near.
func Names(word string, names []string) []string {
	word = strings.ToLower(word)
	if len(word) < 2 || len(word) > 40 {
		return nil
	}
	far := map[string]int{}
	var near []string
	for _, name := range names {
		d := slips(word, name)
		if strings.HasPrefix(name, word) {
			d = 0
		}
		if d <= allowed(word) {
			far[name] = d
			near = append(near, name)
		}
	}
	slices.SortStableFunc(near, func(a, b string) int { return far[a] - far[b] })
	return near[:min(len(near), 3)]
}

// allowed is how many slips a word of that length may have: with two of three letters wrong it is another word.
func allowed(word string) int {
	switch n := len(word); {
	case n < 3:
		return 0
	case n < 6:
		return 1
	}
	return 2
}

// Or joins names as a sentence does: "a, b or c".
func Or(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// slips counts the letters to add, drop, change or swap with the next that make a into b.
func slips(a, b string) int {
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
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
		before, row, next = row, next, before
	}
	return row[len(b)]
}
