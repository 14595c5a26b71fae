package cli

import (
	"slices"
	"strings"
	"unicode"

	"github.com/spf13/cobra"

	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

func (d *Deps) wordsCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "words [WORD]",
		Short: "What a word of the trade means",
		Long: `What a word of the trade means, in two sentences, with its unit and where it comes from; without a word,
the list of them.`,
		Example: "  brazebooth words throat\n  brazebooth words wire feed",
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				d.say("%s\n", strings.Join(termWords(), "\n"))
				return nil
			}
			word := strings.Join(args, " ")
			t, ok := tables.FindTerm(word)
			if !ok {
				return wrong("there is no word "+quote(word), likeWords(word))
			}
			from := "From: " + t.Source + " (" + string(t.Known) + ")"
			if t.Unit != "" {
				from = "In " + t.Unit + ". " + from
			}
			says := report.Wrapped("", quantity.Sentence(t.Says, d.units))
			d.say("%s\n%s%s", t.Word, quantity.Marked(says, d.comma), report.Wrapped("", from))
			return nil
		},
	}
	cmd.Flags().String("units", "", unitsUsage)
	return cmd
}

// likeWords suggests words for an unknown one: words that are spelt like it, and words whose entries use it.
func likeWords(word string) string {
	names := termWords()
	for _, t := range tables.Terms {
		names = append(names, t.Also...)
	}
	like := near.Names(word, names)
	for _, other := range speakOf(word) {
		if len(like) < 4 && !slices.Contains(like, other) {
			like = append(like, other)
		}
	}
	if len(like) == 0 {
		return "brazebooth words lists them all"
	}
	return "type " + near.Or(like) + "; brazebooth words lists them all"
}

// speakOf are up to three words whose entries use this word.
func speakOf(word string) []string {
	word = strings.ToLower(strings.TrimSpace(word))
	if len(word) < 3 {
		return nil
	}
	var list []string
	for i := range tables.Terms {
		t := &tables.Terms[i]
		said := strings.FieldsFunc(strings.ToLower(t.Says), func(r rune) bool {
			return !unicode.IsLetter(r) && r != '-'
		})
		if len(list) < 3 && slices.Contains(said, word) {
			list = append(list, t.Word)
		}
	}
	return list
}
