package book

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/internal/plain"
)

// Resolve finds the record that a hand means: by its id, by the first letters of it (four or more), or by its name.
// What means more than one is an error that lists them.
func Resolve(ctx context.Context, b Book, kind Kind, word string) (Revision, error) {
	word = strings.TrimSpace(word)
	if validID(word) {
		return b.Get(ctx, word)
	}
	var found []Head
	for offset := 0; ; offset += 500 {
		list, err := b.List(ctx, Query{Kind: kind, Text: nameWords(word), Limit: 500, Offset: offset})
		if err != nil {
			return Revision{}, err
		}
		for _, h := range list {
			if strings.EqualFold(h.Name, word) {
				found = append(found, h)
			}
		}
		if len(list) < 500 {
			break
		}
	}
	if len(found) == 0 && len(word) >= 4 {
		begun, err := b.Begun(ctx, kind, strings.ToLower(word))
		if err != nil {
			return Revision{}, err
		}
		found = begun
	}
	switch len(found) {
	case 0:
		return Revision{}, fmt.Errorf("%w: no %s is called %q", ErrNone, kind, plain.Line(word, 60))
	case 1:
		return b.Get(ctx, found[0].ID)
	}
	var ids []string
	for _, h := range found[:min(len(found), 5)] {
		ids = append(ids, h.ID+" of "+h.At[:10])
	}
	return Revision{}, fmt.Errorf("%d records of kind %s are called that: type the id, as %s", len(found), kind, strings.Join(ids, ", "))
}

// nameWords are the words of a name that find it; none where it has none that is searched.
func nameWords(name string) string { return strings.Join(words(name), " ") }
