package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/near"
	"brazebooth/internal/sheet"
	"brazebooth/tables"
)

// wordsCommand is the glossary.
func (d *Deps) wordsCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "words [WORD]",
		Short:   "What a word of the trade means",
		Long:    "What a word of the trade means, in two sentences, with its unit and where it comes from; without a word, the list of them.",
		Example: "  brazebooth words throat\n  brazebooth words wire feed",
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return d.allWords()
			}
			word := strings.Join(args, " ")
			t, ok := tables.TermFor(word)
			if !ok {
				return wrong("no word is "+quote(word), "type "+near.Or(nearWords(word))+"; brazebooth words lists them all")
			}
			return d.word(t)
		},
	}
}

func (d *Deps) allWords() error {
	for i := range tables.Terms() {
		if err := d.say("%s\n", tables.Terms()[i].Word); err != nil {
			return err
		}
	}
	return nil
}

func (d *Deps) word(t *tables.Term) error {
	unit := ""
	if t.Unit != "" {
		unit = "In " + t.Unit + ". "
	}
	return d.say("%s\n%s%s", t.Word, d.marked(sheet.Wrapped("", t.Says)), sheet.Wrapped("", unit+"From: "+t.Source+" ("+string(t.Known)+")"))
}

func nearWords(word string) []string {
	var names []string
	for i := range tables.Terms() {
		names = append(names, append([]string{tables.Terms()[i].Word}, tables.Terms()[i].Also...)...)
	}
	like := near.Names(strings.ToLower(word), names)
	if len(like) == 0 {
		return []string{"metal", "wire feed", "throat"}
	}
	return like[:min(len(like), 4)]
}
