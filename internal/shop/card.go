package shop

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
)

// cleaned cleans a card that is to be saved, and refuses one without a name.
func cleaned(c *book.Card, done *Done) error {
	c.Clean()
	if done.What = c.Name; strings.TrimSpace(c.Name) == "" {
		return wrong("a card without a name", `type one, as tank lid; in a command --name "tank lid"`)
	}
	return nil
}

// SaveCard saves a card as it was computed; c gives its name, tags and note.
func (s *Shop) SaveCard(ctx context.Context, c book.Card, card *calc.Card) (Done, error) {
	return s.act(func(done *Done) error {
		c.Job, c.Card = card.Job, book.Keep(card)
		if err := cleaned(&c, done); err != nil {
			return err
		}
		if err := s.save(ctx, done, book.CardKind, c); err != nil {
			return err
		}
		s.after(ctx, done, func(b book.Book) error { return s.sayNamesakes(ctx, b, done) })
		done.stops(card)
		return nil
	})
}

// stops adds the stops of a card's job for commands; a screen already shows them.
func (d *Done) stops(card *calc.Card) {
	for _, w := range calc.Stops(card.Warnings) {
		d.say("STOP  "+w.Text, "")
	}
}

// sayNamesakes says in which book a card is, and how many cards have its name.
func (s *Shop) sayNamesakes(ctx context.Context, b book.Book, done *Done) error {
	same, err := b.List(ctx, book.Query{Kind: book.CardKind, Text: done.What, Limit: 500})
	if err != nil {
		return err
	}
	n := 0
	for _, h := range same {
		if strings.EqualFold(h.Name, done.What) {
			n++
		}
	}
	done.say("in "+Shown(b.Where(), s.Remote), "")
	if n > 1 {
		text := fmt.Sprintf("there are %d cards of that name now: they are told apart by their ids", n)
		done.say(text, text)
	}
	return nil
}

// Shown is a book's place for a message; a guest sees no path of this machine.
func Shown(where string, remote bool) string {
	if remote {
		return serversBook
	}
	return plain.Line(where, 200)
}

// EditCard changes a kept card's name, tags (with commas) and note, as far as given.
func (s *Shop) EditCard(ctx context.Context, word string, given map[string]string) (Done, error) {
	name, named := given["name"]
	tags, tagged := given["tags"]
	note, noted := given["note"]
	if !named && !tagged && !noted {
		return Done{}, wrong("nothing to change", "type --name, --tags or --note with the new value")
	}
	return s.change(ctx, "changed", book.CardKind, word, book.Resolve, edited(s, func(c *book.Card, done *Done) error {
		if named {
			c.Name = name
		}
		if tagged {
			c.Tags = strings.Split(tags, ",")
		}
		if noted {
			c.Note = note
		}
		return cleaned(c, done)
	}))
}

// Delete marks a record as deleted; its content stays in its history.
func (s *Shop) Delete(ctx context.Context, kind book.Kind, word string) (Done, error) {
	return s.change(ctx, "deleted", kind, word, book.Resolve, s.deleted)
}

func (s *Shop) deleted(r *book.Revision, _ *Done) (book.Revision, error) { return s.Author.Delete(r) }

// Restore undoes a deletion.
func (s *Shop) Restore(ctx context.Context, kind book.Kind, word string) (Done, error) {
	next := func(r *book.Revision, _ *Done) (book.Revision, error) {
		if !r.Deleted {
			return *r, wrong("it was not deleted", "brazebooth book list --deleted shows what was")
		}
		return s.Author.Change(r, r.Body)
	}
	return s.change(ctx, "restored", kind, word, book.ResolveDeleted, next)
}
