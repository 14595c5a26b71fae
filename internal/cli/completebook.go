package cli

import (
	"context"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/plain"
)

// A shell waits for its completions: a book that does not answer within this time completes nothing.
const completeWithin = 1500 * time.Millisecond

// kept completes by the names of what the book has of a kind, or of any; deleted ones by their ids. The book is read
// only: where there is none, nothing is made.
func (d *Deps) kept(kind book.Kind, deleted bool) completer {
	return func(cmd *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		if d.settle(cmd) != nil {
			return nil, noFiles
		}
		if cmd.Flags().Changed("kind") {
			kind = book.Kind(flagText(cmd, "kind"))
		}
		ctx, stop := context.WithTimeout(cmd.Context(), completeWithin)
		defer stop()
		cmd.SetContext(ctx)
		var heads []book.Head
		err := d.withBook(cmd, false, func(ctx context.Context, b book.Book) (err error) {
			heads, err = b.List(ctx, book.Query{Kind: kind, Deleted: deleted, Limit: 500})
			return err
		})
		if err != nil {
			return nil, noFiles
		}
		return words(heads, deleted, begun), ordered
	}
}

// words are what names records: their names, once each, or their ids.
func words(heads []book.Head, deleted bool, begun string) []string {
	var list []string
	have := map[string]bool{}
	for _, h := range heads {
		word, about := plain.Line(h.Name, 60), plain.Line(h.Line, 60)
		if deleted {
			if !h.Deleted {
				continue
			}
			word, about = h.ID, word
		}
		if word == "" || have[word] || !strings.HasPrefix(strings.ToLower(word), strings.ToLower(begun)) {
			continue
		}
		have[word] = true
		list = append(list, word+"\t"+about)
	}
	return list
}
