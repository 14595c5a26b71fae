package report

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
)

func wall(t *testing.T, j calc.Job, name string) Wall {
	t.Helper()
	card, err := calc.Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	p := WallOf(&card, name, quantity.Metric)
	p.When = time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	p.Foot = "test"
	if m, err := calc.WindowOf(context.Background(), j, calc.CoarseWindow, nil); err == nil {
		p.Map = pictured(t, &m)
	}
	return p
}

// A page is one sheet and another for its map. It has the same bytes each time, and its text can be read back.
func TestWallPDF(t *testing.T) {
	deep.Turn(t)
	for name, j := range map[string]calc.Job{
		"Tank lid, Gärtnerei αβ планка": {Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)},
		"brass":                         {Metal: "brass", Thickness: calc.Some(1)},
		"beat": {Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed",
			Gap: calc.Some(1.5)},
		"shaft": {Metal: "stainless-304", Joint: "overlay", ShaftDia: calc.Some(40),
			Filler: "cumn13al8", Position: "overhead", Hazard: "tank,lead-paint,cadmium"},
	} {
		p := wall(t, j, name)
		for _, paper := range []Paper{A4, Letter}[:min(2, deep.Many(1, 2))] {
			a, gone, err := WallPDF(&p, paper, quantity.Metric)
			if err != nil {
				t.Fatal(err)
			}
			b, _, err := WallPDF(&p, paper, quantity.Metric)
			if err != nil || !bytes.Equal(a, b) {
				t.Errorf("%s: two prints differ (%v)", name, err)
			}
			if len(gone) != 0 {
				t.Errorf("%s: replaced %q", name, gone)
			}
			sheets := 1
			if p.Map != nil && len(stopTexts(&p)) == 0 {
				sheets = 2
			}
			if n := pagesIn(a); n != sheets {
				t.Errorf("%s on %s: %d pages, want %d", name, paper, n, sheets)
			}
			var assumed []string // the page names everything that was assumed
			if len(stopTexts(&p)) == 0 && len(p.Card.Assumed) > 0 {
				assumed = append(assumed, "Assumed, nobody chose it: ",
					AssumedText(p.Card.Assumed[:1], quantity.Metric))
			}
			readBack(t, a, &p, assumed...)
		}
	}
}

func pagesIn(pdf []byte) int { return bytes.Count(pdf, []byte("/Type /Page\n")) }

// Cautions that do not fit above the signature go to further pages. None is lost, and none covers the signature.
func TestWallGoesOn(t *testing.T) {
	deep.Turn(t)
	p := wall(t, calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)}, "many")
	m := p.Map
	p.Map = nil
	for i := range 40 {
		text := fmt.Sprintf("caution number %d, %s", i, strings.Repeat("of many words ", 12))
		p.Card.Warnings = append(p.Card.Warnings, calc.Warning{Severity: calc.Caution, Text: text})
	}
	k, err := newInk(A4, p.When)
	if err != nil {
		t.Fatal(err)
	}
	say := p.words(quantity.Metric)
	rest := k.first(&p, &say)
	if len(rest) == 0 || k.y > k.h-signed {
		t.Fatalf("%d left, and the cautions end at %.1f of %.1f mm", len(rest), k.y, k.h-signed)
	}
	p.Map = m
	pdf, _, err := WallPDF(&p, A4, quantity.Inch)
	if err != nil || pagesIn(pdf) < 4 {
		t.Fatalf("%d pages (%v)", pagesIn(pdf), err)
	}
	readBack(t, pdf, &p, "caution number 0,", "caution number 39,", "4 in", "in/min")
}

// readBack reads the page's text with another program, if that is installed.
func readBack(t *testing.T, pdf []byte, p *Wall, also ...string) {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Log("no pdftotext here: the text is not read back")
		return
	}
	file := filepath.Join(t.TempDir(), "wall.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, "-layout", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(string(out)), " ")
	if stopped := len(stopTexts(p)) > 0; strings.Contains(text, "wire feed") == stopped ||
		strings.Contains(text, "Test bead") == stopped {
		t.Errorf("%s: stopped %v, and settings: %.300s", p.Name, stopped, text)
	}
	for _, want := range slices.Concat([]string{p.Name}, stopTexts(p), also) {
		if !strings.Contains(strings.ToLower(text), strings.ToLower(want)) {
			t.Errorf("%s: %q cannot be read back from %.300s", p.Name, want, text)
		}
	}
}

func stopTexts(p *Wall) []string {
	var list []string
	for _, w := range p.Card.Warnings {
		if w.Severity == calc.Stop {
			list = append(list, strings.Join(strings.Fields(w.Text)[:4], " "))
		}
	}
	return list
}

// Characters that the font does not have are replaced and reported, and no control sequence gets in.
func TestWallReplaces(t *testing.T) {
	deep.Turn(t)
	p := wall(t, calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5), Travel: calc.Some(8)}, "焊 a\x1b[31mb")
	pdf, gone, err := WallPDF(&p, A4, quantity.Metric)
	if err != nil || len(gone) != 1 || gone[0] != '焊' || bytes.Contains(pdf, []byte("\x1b[31m")) {
		t.Errorf("%q, %v", gone, err)
	}
}
