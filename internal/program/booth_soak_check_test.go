package program

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"brazebooth/internal/book"
)

// faults compares a whole book with the ledger: lost are acknowledged states that are missing, wrong is everything
// else. The book must not be written meanwhile.
func (l *ledger) faults(ctx context.Context, b book.Book) (lost, wrong []string) {
	say := func(format string, args ...any) { wrong = append(wrong, fmt.Sprintf(format, args...)) }
	kept := map[string][]book.Revision{}
	if err := b.Each(ctx, func(r book.Revision) error {
		if err := r.Verify(); err != nil {
			say("%v", err)
		}
		kept[r.ID] = append(kept[r.ID], r)
		return nil
	}); err != nil {
		say("reading it whole: %v", err)
	}
	if faults, _, err := b.Check(ctx); err != nil || len(faults) > 0 {
		say("its check: %v %v", err, few(faults))
	}
	seen := map[*soakRecord]string{}
	byMark := l.byMark()
	for id, list := range kept {
		list = chained(list)
		l.faultsOfID(ctx, b, id, list, say)
		r := byMark[markOf(&list[0])]
		switch {
		case r == nil:
			say("%s: nobody saved %.80s", id, list[0].Body)
		case seen[r] != "":
			say("%s was saved once and is there as %s and as %s", r.mark, seen[r], id)
		default:
			seen[r] = id
		}
	}
	for _, r := range l.records {
		lost = append(lost, r.missing(chained(kept[r.id]))...)
		if id := seen[r]; r.id != "" && id != "" && id != r.id {
			say("%s was acknowledged as %s and is there as %s", r.mark, r.id, id)
		} else if id != "" {
			wrong = append(wrong, r.strange(chained(kept[id]))...)
		}
	}
	wrong = append(wrong, l.faultsOfLists(ctx, b, seen)...)
	slices.Sort(wrong)
	return lost, wrong
}

// faultsOfID compares the ways to read one record with each other.
func (l *ledger) faultsOfID(ctx context.Context, b book.Book, id string, list []book.Revision, say func(string,
	...any)) {
	head, err := b.Get(ctx, id)
	switch {
	case err != nil:
		say("%s: %v", id, err)
	case head.ID != id:
		say("%s shows the record %s", id, head.ID)
	case head.Rev != list[len(list)-1].Rev:
		say("%s shows %s and not its last revision", id, head.Rev)
	}
	history, err := b.History(ctx, id)
	same := func(x, y book.Revision) bool {
		return x.Rev == y.Rev && x.ID == y.ID && string(x.Body) == string(y.Body)
	}
	if err != nil || !slices.EqualFunc(chained(history), list, same) {
		say("%s: its history is not what reading the whole book finds (%v)", id, err)
	}
}

// faultsOfLists compares lists and searches with the records.
func (l *ledger) faultsOfLists(ctx context.Context, b book.Book, seen map[*soakRecord]string) (wrong []string) {
	for r, id := range seen {
		found, err := b.List(ctx, book.Query{Kind: r.kind, Text: r.mark, Deleted: true})
		if err != nil || len(found) != 1 || found[0].ID != id {
			wrong = append(wrong, fmt.Sprintf("%s, which is %s, is found as %v (%v)", r.mark, id, found, err))
		}
	}
	heads := 0
	for offset := 0; ; offset += 500 {
		list, err := b.List(ctx, book.Query{Deleted: true, Limit: 500, Offset: offset})
		if err != nil {
			return append(wrong, fmt.Sprintf("listing it: %v", err))
		}
		heads += len(list)
		if len(list) == 0 {
			break
		}
	}
	if heads < len(seen) {
		wrong = append(wrong, fmt.Sprintf("%d of %d records are listed", heads, len(seen)))
	}
	return wrong
}

func (l *ledger) byMark() map[string]*soakRecord {
	m := map[string]*soakRecord{}
	for _, r := range l.records {
		m[r.mark] = r
	}
	return m
}

// missing are the acknowledged states that a chain of revisions does not contain in their order.
func (r *soakRecord) missing(chain []book.Revision) (lost []string) {
	at := 0
	for n, s := range r.states {
		if !s.said {
			continue
		}
		for at < len(chain) && !s.is(r, &chain[at]) {
			at++
		}
		if at == len(chain) {
			lost = append(lost, fmt.Sprintf("%s %s: state %d of %d was acknowledged and is lost", r.id, r.mark, n+1,
				len(r.states)))
			at = 0
		}
	}
	return lost
}

// strange are the revisions of a chain that no writer made, or that are in another order.
func (r *soakRecord) strange(chain []book.Revision) (wrong []string) {
	at := 0
	for n := range chain {
		for at < len(r.states) && !r.states[at].is(r, &chain[n]) {
			at++
		}
		if at++; at > len(r.states) {
			return append(wrong, fmt.Sprintf("%s: revision %d of %d, %s, is not one that was made of %s", chain[n].ID,
				n+1, len(chain), chain[n].Rev, r.mark))
		}
	}
	return nil
}

// is reports whether a revision contains exactly a state.
func (s *soakState) is(r *soakRecord, rev *book.Revision) bool {
	if rev.Kind != r.kind || rev.Deleted != s.deleted || markOf(rev) != r.mark {
		return false
	}
	switch r.kind {
	case book.ReadingKind:
		d, err := book.Body[book.Reading](rev)
		return err == nil && d.Note == s.note && d.Amps == ampsOf(r.mark)
	case book.SourceKind:
		p, err := book.Body[book.Source](rev)
		return err == nil && p.Note == s.note
	}
	c, err := book.Body[book.Card](rev)
	return err == nil && c.Note == s.note && math.Abs(c.Job.Feed.V-feedOf(r.mark)) < 1e-9 && len(c.Card.Figures) > 0
}

// markOf is a record's unique word: its name, or for a reading, which has no name, the beginning of its note.
func markOf(rev *book.Revision) string {
	b, err := book.Body[struct{ Name, Note string }](rev)
	if err != nil || b.Name != "" {
		return b.Name
	}
	mark, _, _ := strings.Cut(b.Note, " ")
	return mark
}

// chained are the revisions of one record, each after its parent; those without a parent in the book come last.
func chained(list []book.Revision) []book.Revision {
	out := make([]book.Revision, 0, len(list))
	last := ""
	for len(out) < len(list) {
		next := slices.IndexFunc(list, func(r book.Revision) bool { return r.Parent == last })
		if next < 0 {
			break
		}
		out = append(out, list[next])
		last = list[next].Rev
	}
	for _, r := range list {
		if !slices.ContainsFunc(out, func(o book.Revision) bool { return o.Rev == r.Rev }) {
			out = append(out, r)
		}
	}
	return out
}
