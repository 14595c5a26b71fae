package book

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/internal/plain"
)

// Resolve finds a record by its id, by the first four or more characters of its id, or by its name. If several records
// match, the error, a *Several, lists them.
func Resolve(ctx context.Context, b Book, kind Kind, word string) (Revision, error) {
	return resolve(ctx, b, kind, word, false)
}

// ResolveDeleted is Resolve among deleted records.
func ResolveDeleted(ctx context.Context, b Book, kind Kind, word string) (Revision, error) {
	return resolve(ctx, b, kind, word, true)
}

func resolve(ctx context.Context, b Book, kind Kind, word string, deleted bool) (Revision, error) {
	word = plain.Line(strings.TrimSpace(word), nameWidth) // cut as names are when they are saved
	if validID(word) {
		return ofKind(ctx, b, kind, word, deleted)
	}
	found, err := named(ctx, b, kind, word, deleted)
	if err == nil && len(found) == 0 && len(word) >= 4 {
		found, err = b.Begun(ctx, kind, strings.ToLower(word))
	}
	id, err := only(kind, word, found, err)
	if err != nil {
		return Revision{}, err
	}
	return ofKind(ctx, b, kind, id, deleted)
}

// only is the id of the single record found, or an error.
func only(kind Kind, word string, found []Head, err error) (id string, _ error) {
	switch {
	case err != nil:
		return "", err
	case len(found) == 0:
		return "", fmt.Errorf("%w: no %s is called %q", ErrNone, kind, plain.Line(word, 60))
	case len(found) == 1:
		return found[0].ID, nil
	}
	several := &Several{Kind: kind}
	for _, h := range found {
		several.IDs = append(several.IDs, h.ID)
	}
	return "", several
}

// Several is the error of a look-up by a word that means more than one record.
type Several struct {
	Kind Kind
	IDs  []string // newest first
}

func (s *Several) Error() string {
	return fmt.Sprintf("%d %ss match", len(s.IDs), s.Kind)
}

// Named finds a present record by its name alone, even if the name looks like an id; ErrNone if no record has it.
func Named(ctx context.Context, b Book, kind Kind, name string) (Revision, error) {
	found, err := named(ctx, b, kind, plain.Line(strings.TrimSpace(name), nameWidth), false)
	id, err := only(kind, name, found, err)
	if err != nil {
		return Revision{}, err
	}
	return b.Get(ctx, id)
}

// named lists the records with a name, newest first; of power sources, spools and people only the newest, since after a
// merge two entries with one name are the same thing.
func named(ctx context.Context, b Book, kind Kind, name string, deleted bool) ([]Head, error) {
	var found []Head
	text := strings.Join(words(name), " ") // words of the search index; a name may have none
	for offset := 0; ; offset += 500 {
		list, err := b.List(ctx, Query{Kind: kind, Text: text, Deleted: deleted, Limit: 500, Offset: offset})
		if err != nil {
			return nil, err
		}
		for _, h := range list {
			if strings.EqualFold(h.Name, name) && h.Deleted == deleted {
				found = append(found, h)
			}
		}
		if len(list) < 500 {
			break
		}
	}
	if len(found) > 1 && (kind == SourceKind || kind == SpoolKind || kind == PersonKind) {
		found = found[:1]
	}
	return found, nil
}

// ofKind is a record by its id; an error if its kind is another one, or if it is deleted and deleted is false.
func ofKind(ctx context.Context, b Book, kind Kind, id string, deleted bool) (Revision, error) {
	r, err := b.Get(ctx, id)
	switch {
	case err != nil:
		return r, err
	case kind != "" && r.Kind != kind:
		return r, fmt.Errorf("%w: %s is a %s, not a %s: --kind %s", ErrNone, id, r.Kind, kind, r.Kind)
	case r.Deleted && !deleted:
		return r, fmt.Errorf("%w: %s was deleted; brazebooth book restore --kind %s %s takes that back", ErrNone, id,
			r.Kind, id)
	}
	return r, nil
}

// Summary is a revision in one line: its name, with a card's note or any other record's main data.
func Summary(r *Revision) string {
	name, line, _ := summary(r)
	if r.Kind == CardKind {
		if c, err := Body[listed](r); err == nil {
			line = c.Note
		}
	}
	return strings.TrimSuffix(name+", "+line, ", ")
}
