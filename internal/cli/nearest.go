package cli

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/field"
	"brazebooth/internal/plain"
)

// nearest returns up to three names that begin with the word or are a slip of the hand away from it, the
// nearest first; none where nothing comes near.
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

// slips counts the letters to add, drop or change that make a into b.
func slips(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal + 1
			if a[i] == b[j] {
				change = diagonal
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
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

// flagNames lists the command's flags.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	for _, list := range [...][]field.Field{field.OnCard(), field.OnPages()} {
		for i := range list {
			names = append(names, list[i].Name)
		}
	}
	names = append(names, "units", "theme", "json", "why", "png", "svg", "csv", "show", "markdown", "seen", "tried", "book", "power-source", "name", "tags", "note", "kind", "text", "limit", "deleted", "all", "verdict", "peel", "photo", "lot", "pull", "withdraw", "confirm", "least-amps", "most-amps", "full", "used", "pdf", "paper", "number", "range", "level", "seed", "solution", "keep", "help")
	return slices.DeleteFunc(names, func(n string) bool { return cmd.Flags().Lookup(n) == nil })
}
