package book

import (
	"context"
	"slices"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"pgregory.net/rapid"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

// What is noted of a card when it is made is the same as what its body says, also for hostile text.
func TestListingOfValueAndBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"tank lid", "\x1b[31m", "\u202eabc", "\xff",
			"a\ufffdb", "<&>\u2028", "Ⅷ \x00"}))
		number := rapid.Float64Range(-1e6, 1e6)
		used := calc.Job{Metal: text.Draw(t, "metal"), Gauge: rapid.IntRange(0, 30).Draw(t, "gauge"),
			Thickness: calc.Some(number.Draw(t, "thickness")), Joint: text.Draw(t, "joint"),
			Metal2: text.Draw(t, "metal2"), Filler: text.Draw(t, "filler"),
			Wire: calc.Some(number.Draw(t, "wire")), Mode: text.Draw(t, "mode")}
		severity := rapid.SampledFrom([]calc.Severity{calc.Stop, "caution", "info"})
		c := Card{Name: text.Draw(t, "name"), Note: text.Draw(t, "note"),
			Tags: rapid.SliceOfN(text, 0, 3).Draw(t, "tags"),
			Card: Kept{Used: used, Warns: []calc.Warning{{Severity: severity.Draw(t, "severity")}}}}
		r, err := Author{Program: "test"}.New(CardKind, c)
		if err != nil {
			t.Fatal(err)
		}
		told := r.listing()
		r.made = nil
		read := r.listing()
		if told.name != read.name || told.line != read.line || !slices.Equal(told.words, read.words) {
			t.Errorf("told %q, read %q", told, read)
		}
	})
}

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
	r.Rev = r.hash() // a proper revision, of another body than was made
	noErr(t, b.Save(ctx, r))
	if list, err := b.List(ctx, Query{}); err != nil || len(list) != 1 || list[0].Name != "stove" {
		t.Errorf("%v, %v", list, err)
	}
}

// A record is found by the words that it has now, saved with others or alone, and by no other words.
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
