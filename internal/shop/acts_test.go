package shop

import (
	"context"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
)

// lap is a job with a card; thick is one that has no card at its feed.
var (
	lap   = calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5.5), Travel: calc.Some(10)}
	thick = calc.Job{Metal: "copper", Thickness: calc.Some(20), Feed: calc.Some(0.5), Travel: calc.Some(8)}
)

// Every act, and every reason for which it is refused. The texts have ID in place of a record's id.
func TestActs(t *testing.T) {
	first := saveReading("A", 6.35, 12, 97)
	odd := []act{first, saveReading("A", 6.35, 12, 98), saveReading("A", 6.35, 12, 140)}
	for _, x := range []struct {
		name   string
		before []act
		act    act
		line   string // first line that a command prints
		said   string // text on a screen; "" is not checked
		what   string // text of the error; "" for none
		hint   string // beginning of the error's hint
	}{
		{"save", nil, saveCard("tank lid"), "saved ID tank lid", "kept: tank lid", "", ""},
		{"save a namesake", []act{saveCard("tank lid")}, saveCard("Tank Lid"), "saved ID Tank Lid",
			"kept: Tank Lid; there are 2 cards of that name now: they are told apart by their ids", "", ""},
		{"save without a name", nil, saveCard(" "), "", "", "a card without a name", "type one"},

		{"edit", []act{saveCard("lid")}, edit("lid", "name", "rim"), "changed ID rim", "changed: rim", "", ""},
		{"edit nothing", []act{saveCard("lid")}, edit("lid"), "", "", "nothing to change", "type --name"},
		{"edit to no name", []act{saveCard("lid")}, edit("lid", "name", ""), "", "", "a card without a name",
			"type one"},
		{"edit what is not there", []act{saveCard("lid")}, edit("rim", "note", "x"), "", "",
			`no such record in the book: no card is called "rim"`, "brazebooth book list"},
		{"edit one of two", []act{saveCard("lid"), saveCard("lid")}, edit("lid", "note", "x"), "", "",
			"2 cards match", "type one of their ids"},

		{"delete", []act{saveCard("lid")}, remove(book.CardKind, "lid"), "deleted ID", "deleted: ", "", ""},
		{"delete twice", []act{saveCard("lid"), remove(book.CardKind, "lid")}, remove(book.CardKind, "lid"), "", "",
			`no such record in the book: no card is called "lid"`, "brazebooth book list"},
		{"delete as another kind", []act{saveCard("lid")}, remove(book.SpoolKind, "lid"), "", "",
			`no such record in the book: no spool is called "lid"`, "brazebooth book list"},
		{"restore", []act{saveCard("lid"), remove(book.CardKind, "lid")}, restore(book.CardKind, "lid"),
			"restored ID", "", "", ""},
		{"restore by id what is there", []act{saveCard("lid")}, ofFirst(book.CardKind,
			func(s *Shop, ctx context.Context, id string) (Done, error) { return s.Restore(ctx, book.CardKind, id) }),
			"", "", "it was not deleted", "brazebooth book list --deleted"},

		{"trial", nil, saveTrial(lap, "rolled-edge", "bad", ""), "saved ID test bead, bad", "kept: test bead, bad",
			"", ""},
		{"trial as it looks", nil, saveTrial(lap, "good", "", ""), "saved ID test bead, good", "", "", ""},
		{"trial that has no card", nil, saveTrial(thick, "rolled-edge", "bad", ""), "saved ID test bead, bad",
			"kept: test bead, bad; it has no card and is kept as it was laid: feed: no card is computed with it " +
				"(outside the formula's range: rise 1000, too far from what this heat can do)", "", ""},
		{"trial of no verdict", nil, saveTrial(lap, "", "", ""), "", "", "a trial needs a verdict", "type --verdict"},
		{"trial of another verdict", nil, saveTrial(lap, "pores", "fine", ""), "", "", "a trial needs a verdict",
			"type --verdict"},
		{"trial against its look", nil, saveTrial(lap, "pores", "good", ""), "", "",
			"the verdict good together with pores", "say acceptable"},
		{"trial of no sight", nil, saveTrial(lap, "ugly", "bad", ""), "", "",
			`seen: nothing that a bead shows is called "ugly"`, "type any of rolled-edge"},
		{"trial of no job", nil, saveTrial(calc.Job{Metal: "cheese"}, "pores", "bad", ""), "", "",
			"metal: no metal is called \"cheese\"", ""},
		{"trial at a new power source", []act{first}, saveTrial(lap, "pores", "", "B"), "saved ID test bead, bad",
			`kept: test bead, bad; the power source "B" is new and entered too; where A was meant,` +
				" brazebooth book delete takes both back", "", ""},

		{"reading", nil, first, "saved ID reading of A", "kept: reading of A", "", ""},
		{"reading by another spelling", []act{first}, saveReading("a", 6.35, 12, 98), "saved ID reading of A",
			"kept: reading of A", "", ""},
		{"reading of a new power source", []act{first}, saveReading("B", 6.35, 12, 98), "saved ID reading of B",
			`kept: reading of B; the power source "B" is new and entered too; where A was meant,` +
				" brazebooth book delete takes both back", "", ""},
		{"reading far from the others", odd[:2], odd[2], "saved ID reading of A",
			"kept: reading of A; a reading lies far from the others and is not used: brazebooth book reading shows it",
			"", ""},
		{"reading of nothing", nil, saveReading("", 6.35, 12, 97), "", "", "a reading without a power source",
			"type --power-source"},
		{"reading without amps", nil, saveReading("A", 6.35, 12, 0), "", "", "volts without amps teach nothing",
			"type --amps"},
		{"reading without feed", nil, saveReading("A", 0, 12, 97), "", "",
			"a reading teaches only with feed and stick-out measured", "type --pull"},
		{"reading without stick-out", nil, saveReading("A", 6.35, 0, 97), "", "",
			"a reading teaches only with feed and stick-out measured", "type --pull"},
		{"withdraw", odd, ofFirst(book.ReadingKind, (*Shop).Withdraw), "withdrawn ID", "", "", ""},
		{"withdraw by a name", odd, word("booth 1", (*Shop).Withdraw), "", "",
			`a reading is named by its id, not by "booth 1"`, "brazebooth book reading lists"},
		{"confirm", odd, ofFirst(book.ReadingKind, (*Shop).Confirm), "confirmed ID", "", "", ""},
		{"confirm what is withdrawn", []act{first, ofFirst(book.ReadingKind, (*Shop).Withdraw)},
			ofFirst(book.ReadingKind, (*Shop).Confirm), "", "",
			"no such record in the book: ID was deleted; brazebooth book restore --kind reading ID takes that back",
			"brazebooth book list"},
		{"confirm what is no reading", []act{saveCard("lid")}, ofFirst(book.CardKind, (*Shop).Confirm), "", "",
			"no such record in the book: ID is a card, not a reading: --kind card", "brazebooth book list"},

		{"source", nil, enter(book.SourceKind, "name", "A", "rated-amps", "200A", "rated-duty", "60%"),
			"saved ID power source A, rated 200 A, duty cycle 60 %", "", "", ""},
		{"source changed", []act{first}, enter(book.SourceKind, "name", "a", "most-amps", "250"),
			"changed ID power source A, up to 250 A", "changed: power source A, up to 250 A", "", ""},
		{"source as it is", []act{first}, enter(book.SourceKind, "name", "A"), "power source A; nothing to change",
			"power source A; nothing to change", "", ""},
		{"source without a name", nil, enter(book.SourceKind, "rated-amps", "200A"), "", "",
			"a power source without a name", "type --name"},
		{"source of much", nil, enter(book.SourceKind, "name", "A", "least-amps", "much"), "", "",
			`--least-amps: a current "much" is not a number`, "type "},
		{"source the wrong way round", nil, enter(book.SourceKind, "name", "A", "least-amps", "90", "most-amps",
			"80"), "", "", "a plate from 90 to 80 A", "--least-amps"},

		{"spool", nil, enter(book.SpoolKind, "lot", "A17", "full", "4540"),
			"saved ID spool A17: cusi3 0.889 mm, 4540 g left, 857 m of wire", "", "", ""},
		{"spool used", []act{enter(book.SpoolKind, "lot", "A17", "full", "4540")}, enter(book.SpoolKind, "lot", "a17",
			"used", "40"),
			"changed ID spool A17: cusi3 0.889 mm, 4500 g left, 850 m of wire", "", "", ""},
		{"spool of another wire", nil, enter(book.SpoolKind, "lot", "A17", "full", "4540", "wire", "0.9"),
			"saved ID spool A17: cusi3 0.9 mm, 4540 g left, 837 m of wire", "", "", ""},
		{"spool without a lot", nil, enter(book.SpoolKind, "full", "4540"), "", "", "a spool without a lot",
			"type what is on it"},
		{"spool without its weight", nil, enter(book.SpoolKind, "lot", "A17"), "", "",
			"a new spool without its weight", "type --full"},
		{"spool of no number", nil, enter(book.SpoolKind, "lot", "A17", "full", "NaN"), "", "",
			`--full: "NaN" is not a weight of wire, or is more than a tonne`, "type grams"},
		{"spool of less than nothing", nil, enter(book.SpoolKind, "lot", "A17", "full", "-1"), "", "",
			"a full spool of less than nothing", "type grams"},
		{"spool of which too much is used", nil, enter(book.SpoolKind, "lot", "A17", "full", "100", "used", "200"),
			"", "", "-100 g cannot be left of a spool of 100 g", "check the grams"},

		{"person", nil, enter(book.PersonKind, "name", "ana"), "saved ID person ana", "kept: person ana", "", ""},
		{"person who is known", []act{enter(book.PersonKind, "name", "ana")}, enter(book.PersonKind, "name", "Ana"),
			"person ana; nothing to change", "", "", ""},
		{"person of a long name", []act{enter(book.PersonKind, "name", strings.Repeat("ana", 20))},
			enter(book.PersonKind, "name", strings.Repeat("ana", 20)),
			"person anaanaanaanaanaanaanaan…; nothing to change", "", "", ""},
		{"person without a name", nil, enter(book.PersonKind, "name", " "), "", "", "a person without a name",
			"type a short one"},

		{"practice", nil, func(ctx context.Context, s *Shop) (Done, error) {
			return s.SavePractice(ctx, practice.Outcome{Level: 2, Seed: 7, Beads: 3, Verdict: "good", Program: 2})
		}, "saved ID practice level 2 seed 7", "", "", ""},

		{"load what is deleted", []act{saveCard("lid"), remove(book.CardKind, "lid")}, ofFirst(book.CardKind,
			func(s *Shop, ctx context.Context, id string) (Done, error) {
				_, err := s.Load(ctx, id)
				return Done{}, err
			}), "", "",
			"no such record in the book: ID was deleted; brazebooth book restore --kind card ID takes that back",
			"brazebooth book list"},
		{"load a spool", []act{enter(book.SpoolKind, "lot", "A17", "full", "4540")}, ofFirst(book.SpoolKind,
			func(s *Shop, ctx context.Context, id string) (Done, error) {
				_, err := s.Load(ctx, id)
				return Done{}, err
			}), "", "", "no such record in the book: ID is a spool, not a card: --kind spool", "brazebooth book list"},
		{"load from no book", nil, onlyErr(func(ctx context.Context, s *Shop) error {
			_, err := s.Load(ctx,
				"0123456789abcdef")
			return err
		}), "", "", "there is no book yet at BOOK", "save something first"},
		{"find in no book", nil, onlyErr(func(ctx context.Context, s *Shop) error {
			_, err := s.List(ctx, "card",
				"lid")
			return err
		}), "", "", "", ""},
		{"recall of nobody", []act{first}, onlyErr(func(ctx context.Context, s *Shop) error {
			_, err := s.Recall(ctx,
				"B", lap)
			return err
		}), "", "",
			`no such record in the book: no source is called "B"`, "brazebooth book list"},
		{"compare with nothing", []act{saveCard("lid")}, onlyErr(func(ctx context.Context, s *Shop) error {
			return s.With(ctx, false, func(b book.Book) error {
				_, _, _, err := Compare(ctx, b, "lid", "rim")
				return err
			})
		}), "", "",
			`no such record in the book: no card is called "rim"`, "brazebooth book list"},
	} {
		t.Run(x.name, func(t *testing.T) {
			ctx, s := t.Context(), newShop(t)
			for _, do := range x.before {
				if _, err := do(ctx, s); err != nil {
					t.Fatal(err)
				}
			}
			before := revisions(t, s)
			done, err := x.act(ctx, s)
			plainly := func(text string) string {
				return regexp.MustCompile(`\b[0-9a-f]{16}\b`).ReplaceAllString(strings.ReplaceAll(text, s.Where,
					"BOOK"), "ID")
			}
			if x.what != "" {
				m := mistake.Of(err)
				if m == nil || plainly(m.Error()) != x.what || !strings.HasPrefix(m.Hint,
					x.hint) || m.Hint == "" && x.hint != "" {
					t.Fatalf("%+v, %v", m, err)
				}
				if after := revisions(t, s); after != before {
					t.Errorf("refused but saved: %d revisions, %d before", after, before)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if got := plainly(done.Line()); !strings.HasPrefix(got, x.line) || x.said != "" && got != x.line {
				t.Errorf("said %q, want %q", got, x.line)
			}
			if got := plainly(done.Said()); x.said != "" && got != x.said {
				t.Errorf("on a screen %q, want %q", got, x.said)
			}
			if after := revisions(t, s); (after > before) != (done.Verb != "") {
				t.Errorf("%s: %d revisions, %d before", done.Line(), after, before)
			}
		})
	}
}

// revisions counts the revisions in the book.
func revisions(t *testing.T, s *Shop) (n int) {
	t.Helper()
	if _, err := os.Stat(s.Where); err != nil {
		return 0
	}
	err := s.With(context.Background(), false, func(b book.Book) error {
		return b.Each(context.Background(), func(book.Revision) error { n++; return nil })
	})
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// writes are all acts that write.
var writes = map[string]act{
	"save": saveCard("rim"), "edit": edit("lid", "note", "x"), "delete": remove(book.CardKind,
		"lid"), "restore": restore(book.CardKind, "lid"),
	"trial": saveTrial(lap, "pores", "bad", ""), "reading": saveReading("A", 6.35, 12, 97), "withdraw": word("0123",
		(*Shop).Withdraw), "confirm": word("0123", (*Shop).Confirm),
	"source": enter(book.SourceKind, "name", "B"), "source changed": enter(book.SourceKind, "name", "A", "note",
		"x"), "spool": enter(book.SpoolKind, "lot", "A17", "full", "100"),
	"person": enter(book.PersonKind, "name", "ana"), "practice": func(ctx context.Context, s *Shop) (Done,
		error) {
		return s.SavePractice(ctx, practice.Outcome{})
	},
}

// With LookOnly no act saves anything.
func TestLookOnlySavesNothing(t *testing.T) {
	s := newShop(t)
	for _, do := range []act{saveCard("lid"), saveReading("A", 6.35, 12, 97)} {
		if _, err := do(t.Context(), s); err != nil {
			t.Fatal(err)
		}
	}
	before := revisions(t, s)
	s.LookOnly = true
	for name, do := range writes {
		if _, err := do(t.Context(), s); mistake.Of(err) != ErrLookOnly {
			t.Errorf("%s: %v", name, err)
		}
	}
	if after := revisions(t, s); after != before {
		t.Errorf("%d revisions, %d before", after, before)
	}
}

// While the book's server cannot be reached, new records go into the local file, and every act says so; changes, which
// need the book itself, are refused.
func TestServerIsAway(t *testing.T) {
	s := newShop(t)
	s.Beside, s.Where = s.Where, "postgres://booth@localhost:1/none?connect_timeout=1"
	kept := 0
	for name, do := range writes {
		done, err := do(t.Context(), s)
		switch name {
		case "save", "trial", "reading", "practice":
			kept++
			told := "kept in " + s.Beside + "; when it is back: brazebooth book merge " + s.Beside
			if err != nil || !strings.Contains(done.Said(), told) || done.Verb != "saved" {
				t.Errorf("%s: %+v, %v", name, done, err)
			}
		default:
			if err == nil {
				t.Errorf("%s: %+v", name, done)
			}
		}
	}
	beside := newShop(t)
	beside.Where = s.Beside
	if n := revisions(t, beside); n != kept {
		t.Errorf("%d revisions beside, want %d", n, kept)
	}
}

// A new record that no book takes goes into a file, by every act; but not for a guest, or for a caller who gave up.
func TestUnsavedRecordsAreRescued(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("TMPDIR", dir)
	s := newShop(t)
	if err := os.WriteFile(s.Where, []byte("dear shop, this is no book but a letter, and a long one at that"),
		0o600); err != nil {
		t.Fatal(err)
	}
	gone, leave := context.WithCancel(t.Context())
	leave()
	for name, do := range map[string]act{"save": writes["save"], "practice": writes["practice"],
		"trial": writes["trial"]} {
		_, err := do(t.Context(), s)
		lies := regexp.MustCompile(`it was saved in (\S+): take it in with brazebooth book import (\S+)$`)
		if found := lies.FindStringSubmatch(err.Error()); found == nil || found[1] != found[2] {
			t.Errorf("%s: %v", name, err)
		}
		s.Remote = true
		if _, err := do(t.Context(), s); err == nil || strings.Contains(err.Error(), "lies in") {
			t.Errorf("%s of a guest: %v", name, err)
		}
		s.Remote = false
		if _, err := do(gone, s); err == nil || strings.Contains(err.Error(), "lies in") {
			t.Errorf("%s of a caller who gave up: %v", name, err)
		}
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) != 3 {
		t.Errorf("%v, %v", left, err)
	}
}

// Changes of many users at the same time are all saved: each takes one gram off the same spool.
func TestChangesOfManyAtOnce(t *testing.T) {
	s := newShop(t)
	s.Author.Now = nil
	if _, err := enter(book.SpoolKind, "lot", "A17", "full", "100")(t.Context(), s); err != nil {
		t.Fatal(err)
	}
	var all sync.WaitGroup
	for range 12 {
		all.Go(func() {
			if _, err := enter(book.SpoolKind, "lot", "A17", "used", "1")(t.Context(), s); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	done, err := enter(book.SpoolKind, "lot", "A17")(t.Context(), s)
	if err != nil || !strings.Contains(done.Line(), ", 88 g left") {
		t.Errorf("%s, %v", done.Line(), err)
	}
}
