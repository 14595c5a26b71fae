package cli

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/plain"
)

// nearest returns the names that a slip of the hand away from the word, or that begin with it; the
// nearest first, none where nothing comes near.
func nearest(word string, names []string) []string {
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
		if d <= 2 && d < len(word) {
			far[name] = d
			near = append(near, name)
		}
	}
	slices.SortStableFunc(near, func(a, b string) int { return far[a] - far[b] })
	return near[:min(len(near), 3)]
}

// slips counts the letters to add, drop, change or swap with their neighbour that make a into b (optimal
// string alignment).
func slips(a, b string) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}

// flagError says of a flag that is unknown which ones come near, and of one without its value what it wants.
func flagError(cmd *cobra.Command, err error) error {
	what := plain.Line(err.Error(), 120)
	see := "see " + cmd.CommandPath() + " --help"
	var named interface{ GetSpecifiedName() string }
	if !errors.As(err, &named) {
		return wrong(what, see)
	}
	name := named.GetSpecifiedName()
	if f := cmd.Flags().Lookup(name); f != nil {
		return wrong(what, "type --"+name+" and "+f.Usage)
	}
	var flags []string
	for _, n := range nearest(name, flagNames(cmd)) {
		flags = append(flags, "--"+n)
	}
	if len(flags) == 0 {
		return wrong(what, see)
	}
	return wrong(what, "type "+orList(flags))
}
