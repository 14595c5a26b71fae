package book

import (
	"context"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

// A revision that was altered after it was made is checked again in full.
func TestAlteredAfterMade(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	b := newFile(t)
	alter := map[string]func(*Revision){
		"body": func(r *Revision) { r.Body = []byte(`{"name":"eve"}`) },
		"byte": func(r *Revision) { r.Body[9] = 'x' },
		"who":  func(r *Revision) { r.Who = "eve" },
		"hash": func(r *Revision) { r.Body = []byte("{\"name\":\"\u202e\"}"); r.Rev = r.hash() },
		"form": func(r *Revision) { r.Body = []byte(`{ "name":"eve"}`); r.Rev = r.hash() },
		"kind": func(r *Revision) { r.Kind = "crab"; r.Rev = r.hash() },
	}
	for name, change := range alter {
		r, err := by(&now).New(PersonKind, Person{Name: "fay"})
		noErr(t, err)
		change(&r)
		if err := b.Save(ctx, r); err == nil {
			t.Errorf("altered %s is kept", name)
		}
	}
	r, err := by(&now).New(CardKind, someCard(t, "tank", gutter))
	noErr(t, err)
	other, err := by(&now).New(CardKind, someCard(t, "stove", gutter))
	noErr(t, err)
	r.Body = other.Body
	r.Rev = r.hash() // a valid revision, but not with the body that it was made with
	noErr(t, b.Save(ctx, r))
	if list, err := b.List(ctx, Query{}); err != nil || len(list) != 1 || list[0].Name != "stove" {
		t.Errorf("%v, %v", list, err)
	}
}

// A record is found by the words that it has now, and by no others, whether it was saved alone or with others.
func TestWordsFollowChanges(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		who := by(&now)
		first, err := who.New(CardKind, someCard(t, "rainwater lid", gutter))
		noErr(t, err)
		second, err := who.Change(&first, someCard(t, "planter lid", gutter))
		noErr(t, err)
		third, err := who.Change(&second, someCard(t, "stove", gutter))
		noErr(t, err)
		empty, err := who.New(PersonKind, Person{})
		noErr(t, err)
		noErr(t, b.Save(ctx, first, second, empty))
		look := func(text string, want int) {
			t.Helper()
			for _, query := range []string{text, "galv " + text, text + " tank"} {
				if list, err := b.List(ctx, Query{Text: query}); err != nil || len(list) != want {
					t.Errorf("%q finds %v, %v", query, list, err)
				}
			}
		}
		look("rain", 0)
		look("lid", 1)
		look("planter", 1)
		noErr(t, b.Save(ctx, third))
		look("lid", 0)
		look("stove", 1)
		var kept int
		noErr(t, b.(*store).read.QueryRow("SELECT count(*) FROM words").Scan(&kept))
		if want := len(third.listing().words); kept != want {
			t.Errorf("%d words are kept of %d", kept, want)
		}
	})
}
