package program

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/deep"
	"brazebooth/internal/linear"
	"brazebooth/internal/shop"
	"brazebooth/tui"
)

// asked is one act in each medium; empty for a medium without this act.
type asked struct {
	name    string
	before  []string // commands that make the book
	command string
	screen  func(tui.Keeper) error
	lines   []string // after the answers that lead to the card
	refused bool
}

// laid is the job of every act: as answers to the questions, as flags, and as a Job.
var (
	laidLines = []string{"steel", "18", "", "dip", "feed 5.5", "travel 10"}
	laidFlags = " --metal mild-steel --gauge 18ga --mode dip --feed 5.5 --travel 10"
	laidJob   = calc.Job{Metal: "mild-steel", Gauge: 18, Mode: "dip", Feed: calc.Some(5.5), Travel: calc.Some(10)}
)

func acts() []asked {
	ctx := context.Background()
	keep := func(name string) func(tui.Keeper) error {
		return func(k tui.Keeper) error {
			card, err := calc.Solve(laidJob)
			if err != nil {
				return err
			}
			_, err = k.Keep(ctx, name, &card)
			return err
		}
	}
	trial := func(seen, verdict, source string) func(tui.Keeper) error {
		return func(k tui.Keeper) error {
			_, err := k.Cut(ctx, laidJob, seen, verdict, source, tui.Measured{})
			return err
		}
	}
	measure := func(source string, r calc.Reading) func(tui.Keeper) error {
		return func(k tui.Keeper) error { _, _, err := k.Measure(ctx, source, r, 0, laidJob); return err }
	}
	enter := func(kind string, given map[string]string) func(tui.Keeper) error {
		return func(k tui.Keeper) error { _, err := k.Enter(ctx, kind, given); return err }
	}
	mark := func(deleted bool) func(tui.Keeper) error {
		return func(k tui.Keeper) error {
			name := "lid"
			if list, err := k.List(ctx, "card", "lid"); err == nil && len(list) == 1 {
				name = list[0].ID
			}
			return k.Mark(ctx, "card", name, deleted)
		}
	}
	booth := []string{"book source --name A --rated-amps 200"}
	lid := []string{"book save --name lid" + laidFlags}
	return []asked{
		{name: "save", command: "book save --name lid" + laidFlags, screen: keep("lid"), lines: []string{"keep lid"}},
		{name: "save without a name", command: "book save --name \u200b" + laidFlags, screen: keep("\u200b"),
			lines: []string{"keep \u200b"}, refused: true},
		{name: "trial as it looks", command: "book trial --seen rolled-edge" + laidFlags, screen: trial("rolled-edge",
			"", ""), lines: []string{"correct", "rolled-edge", "no", "keep-bead"}},
		{name: "trial called acceptable", command: "book trial --seen rolled-edge --verdict acceptable" + laidFlags,
			screen: trial("rolled-edge", "acceptable", ""),
			lines:  []string{"correct", "rolled-edge", "no", "keep-bead acceptable"}},
		{name: "trial at a power source of other letters", before: booth,
			command: "book trial --seen pores --power-source a" + laidFlags, screen: trial("pores", "", "a")},
		{name: "trial at a new power source", before: booth,
			command: "book trial --seen pores --power-source B" + laidFlags,
			screen:  trial("pores", "", "B")},
		{name: "trial against its look", command: "book trial --seen pores --verdict good" + laidFlags,
			screen: trial("pores", "good", ""), refused: true},
		{name: "trial of no look", command: "book trial --seen ugly" + laidFlags, screen: trial("ugly", "bad", ""),
			refused: true},
		{name: "trial of no verdict", command: "book trial --seen= --verdict fine" + laidFlags, screen: trial("",
			"fine", ""), refused: true},
		{name: "reading", before: booth,
			command: "book reading --power-source A --feed 5.5 --stickout 12mm --amps 90 --volts 15 --mode dip",
			screen:  measure("A", calc.Reading{Feed: 5.5, StickOut: 12, Amps: 90, Volts: 15})},
		{name: "the first reading of a book",
			command: "book reading --power-source A --feed 5.5 --stickout 12mm --amps 90",
			screen:  measure("A", calc.Reading{Feed: 5.5, StickOut: 12, Amps: 90})},
		{name: "reading of a new power source", before: booth,
			command: "book reading --power-source B --feed 5.5 --stickout 12mm --amps 90",
			screen:  measure("B", calc.Reading{Feed: 5.5, StickOut: 12, Amps: 90})},
		{name: "reading of no power source", command: "book reading --feed 5.5 --stickout 12mm --amps 90",
			screen: measure(" ", calc.Reading{Feed: 5.5, StickOut: 12, Amps: 90}), refused: true},
		{name: "reading without amps", command: "book reading --power-source A --feed 5.5 --stickout 12mm --volts 15",
			screen: measure("A", calc.Reading{Feed: 5.5, StickOut: 12, Volts: 15}), refused: true},
		{name: "reading without stick-out", command: "book reading --power-source A --feed 5.5 --amps 90",
			screen: measure("A", calc.Reading{Feed: 5.5, Amps: 90}), refused: true},
		{name: "source", command: "book source --name B --rated-amps 200A --note old", screen: enter("source",
			map[string]string{"name": "B", "rated-amps": "200A", "note": "old"})},
		{name: "source changed", before: booth, command: "book source --name a --most-amps 250A",
			screen: enter("source", map[string]string{"name": "a", "most-amps": "250A"})},
		{name: "source as it is", before: booth, command: "book source --name A --rated-amps 200A",
			screen: enter("source", map[string]string{"name": "A", "rated-amps": "200A"})},
		{name: "source of no amps", command: "book source --name B --rated-amps much", screen: enter("source",
			map[string]string{"name": "B", "rated-amps": "much"}), refused: true},
		{name: "source the wrong way round", command: "book source --name B --least-amps 90 --most-amps 80",
			screen: enter("source", map[string]string{"name": "B", "least-amps": "90",
				"most-amps": "80"}), refused: true},
		{name: "spool", command: "book spool --lot A17 --full 4540 --used 40", screen: enter("spool",
			map[string]string{"lot": "A17", "full": "4540", "used": "40"})},
		{name: "spool without its weight", command: "book spool --lot A17", screen: enter("spool",
			map[string]string{"lot": "A17"}), refused: true},
		{name: "spool of less than nothing", command: "book spool --lot A17 --full 100 --used 200",
			screen: enter("spool", map[string]string{"lot": "A17", "full": "100", "used": "200"}), refused: true},
		{name: "person", command: "book person ana", screen: enter("person", map[string]string{"name": "ana"})},
		{name: "delete", before: lid, command: "book delete lid", screen: mark(true)},
		{name: "delete what is not there", before: lid[:1], command: "book delete lidd",
			screen: func(k tui.Keeper) error { return k.Mark(ctx, "card", "lidd", true) }, refused: true},
		{name: "restore what is there", before: lid, command: "book restore lid",
			screen: func(k tui.Keeper) error { return k.Mark(ctx, "card", "lid", false) }, refused: true},
		{name: "recall of nobody", before: booth, command: "card --power-source C" + laidFlags,
			lines:  []string{"power-source C"},
			screen: func(k tui.Keeper) error { _, err := k.Recall(ctx, "C", laidJob); return err }, refused: true},
	}
}

// outcome is what an act saved in the book, and its answer.
type outcome struct{ kept, what, hint string }

// outcomeOf runs an act on a new book and reads the book's content afterwards, without the ids, which are random.
func (a *asked) outcomeOf(t *testing.T, act func(file string, now book.Clock) (what, hint string)) (o outcome) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "book.db")
	now := time.Date(2026, 3, 1, 9, 30, 0, 0, time.UTC)
	clock := func() time.Time { now = now.Add(time.Second); return now }
	for _, line := range a.before {
		if _, told, code := typedIn(line, file, clock); code != 0 {
			t.Fatal(line, told)
		}
	}
	o.what, o.hint = act(file, clock)
	b, err := book.Read(t.Context(), file)
	if errors.Is(err, book.ErrNone) {
		return o
	}
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	err = b.Each(t.Context(), func(r book.Revision) error {
		o.kept += fmt.Sprintf("%s, first %v, deleted %v: %s\n", r.Kind, r.Parent == "", r.Deleted, r.Body)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// typedIn runs a command.
func typedIn(line, file string, now book.Clock) (out, told string, code int) {
	var o, e bytes.Buffer
	code = cli.Run(context.Background(), strings.Fields(line), cli.Deps{Out: &o, Err: &e, Book: file, Who: "ada",
		Now: now})
	return o.String(), e.String(), code
}

// letters are the letters of a text, since a voice spells out other characters, breaks lines and begins sentences.
func letters(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, text)
}

// The same act by a command, on a screen and line by line saves the same in the book, and is refused in the same words.
func TestEveryMediumDoesTheSame(t *testing.T) {
	t.Parallel()
	for _, a := range deep.Of(t, acts(), 9) {
		t.Run(a.name, func(t *testing.T) {
			byCommand := a.outcomeOf(t, func(file string, now book.Clock) (what, hint string) {
				_, told, code := typedIn(a.command, file, now)
				if (code != 0) != a.refused {
					t.Errorf("exit code %d: %s", code, told)
				}
				if code != 0 {
					what, hint, _ = strings.Cut(strings.TrimPrefix(strings.TrimSpace(told), "brazebooth: "), "\n")
				}
				return what, hint
			})
			if a.refused && byCommand.hint == "" {
				t.Errorf("refused without a hint: %s", byCommand.what)
			}
			at := func(file string, now book.Clock) *shop.Shop {
				return &shop.Shop{Where: file, Author: book.Author{Who: "ada", Program: cli.Version, Now: now}}
			}
			onScreen := a.outcomeOf(t, func(file string, now book.Clock) (what, hint string) {
				err := a.screen(at(file, now))
				if err == nil {
					return "", ""
				}
				what, hint, _ = shop.Explain(err)
				return what, hint
			})
			if onScreen != byCommand {
				t.Errorf("by command\n%+v\nat a screen\n%+v", byCommand, onScreen)
			}
			if a.lines == nil {
				return
			}
			var said bytes.Buffer
			byLines := a.outcomeOf(t, func(file string, now book.Clock) (what, hint string) {
				in := strings.NewReader(strings.Join(append(laidLines, a.lines...), "\n") + "\n")
				if err := linear.Run(t.Context(), linear.Options{Book: at(file, now)}, in, &said); err != nil {
					t.Error(err)
				}
				return byCommand.what, byCommand.hint
			})
			if byLines != byCommand {
				t.Errorf("by command\n%+v\nline by line\n%+v\n%s", byCommand, byLines, &said)
			}
			if heard := letters(said.String()); !strings.Contains(heard,
				letters(byCommand.what)) || !strings.Contains(heard, letters(byCommand.hint)) {
				t.Errorf("%q, %q was not said in\n%s", byCommand.what, byCommand.hint, &said)
			}
		})
	}
}
