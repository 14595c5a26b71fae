package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// looker is a book in which this user can save nothing.
type looker struct{ Keeper }

func (looker) LooksOnly() bool { return true }

// A user who may only look is not invited to save, and is told so before typing a name.
func TestReadOnlyUserIsTold(t *testing.T) {
	if looksOnly(nil) || !looksOnly(looker{}) {
		t.Error("who may only look is not told from others")
	}
	for _, kind := range []string{"card", ""} {
		p := bookPage{kind: kind, looks: true}
		p.field.insert("lid")
		if p.lines() != 0 || strings.Contains(p.about(nil).keys, "keep") {
			t.Errorf("kind %q: %d lines, keys %s", kind, p.lines(), p.about(nil).keys)
		}
	}
}

// Each metal has a short description that fits into a row beside a card on 80 columns.
func TestEachMetalHasAShortName(t *testing.T) {
	const room = 21
	rows := choice.ByName("metal").Rows(&choice.Present{})
	if len(rows) != len(tables.Metals) {
		t.Errorf("%d rows", len(rows))
	}
	for _, r := range rows {
		if n := width(r.Brief); n == 0 || n > room {
			t.Errorf("%s: %q", r.ID, r.Brief)
		}
	}
}

// The key that scrolls is shown only if there is something to scroll, the way back always.
func TestScrollKeyIsShownIfNeeded(t *testing.T) {
	var v window
	v.draw(&theme{}, make(block, 3), 40, 5)
	if v.key() != "" {
		t.Errorf("three lines of five scroll: %q", v.key())
	}
	if v.whole(make(block, 9), 5); !strings.Contains(v.key(), "scroll") {
		t.Error("nine lines of five do not scroll")
	}
}

// A timed arc without times offers nothing to change.
func TestUnchangeableIsNotOffered(t *testing.T) {
	m := newRoot(Options{Solve: calc.Solve, Units: quantity.Metric, computing: &computing{}})
	if keys := m.beat.about(m).keys; strings.Contains(keys, "change") || !strings.HasPrefix(keys, "esc") {
		t.Errorf("keys without times: %s", keys)
	}
}
