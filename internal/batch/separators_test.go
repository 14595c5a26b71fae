package batch

import (
	"encoding/csv"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"brazebooth/internal/deep"
	"brazebooth/internal/plain"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

// The output of a batch is harmless to programs that split it at another separator, and reads back as it was. A number
// keeps its sign where no program sees the beginning of another cell.
func TestAnswersAreHarmlessToEveryReader(t *testing.T) {
	signs := rapid.SampledFrom([]string{"=", "+", "-", "@", "＝", "'", `"`, ",", ";", "\t", " ", "x", "5", "cmd|"})
	text := rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(signs, 0, 7).Draw(t, "text"),
			"")
	})
	rapid.Check(t, func(t *rapid.T) {
		own := rapid.SampledFrom([]rune{',', ';', '\t'}).Draw(t, "separator")
		cells := rapid.SliceOfN(rapid.OneOf(text, rapid.Just("-5"), rapid.Just("+5,2")), 1, 5).Draw(t, "cells")
		s := grid{comma: byte(own)}
		var line []byte
		for i, c := range cells {
			if i > 0 {
				line = append(line, s.comma)
			}
			line = s.appendCell(line, c)
		}
		for _, comma := range ",;\t" {
			for _, cell := range strings.Split(string(line), string(comma)) {
				if runs(cell) {
					t.Fatalf("%q: %q, split at %q, would run", line, cell, comma)
				}
			}
		}
		line = append(append(line, s.comma), "end\n"...)
		back := read(t, string(line), own, false)
		for i := range cells {
			if plain.Uncell(back[i]) != cells[i] {
				t.Fatalf("%q came back as %q from %q", cells[i], back[i], line)
			}
		}
		for _, other := range ",;\t" {
			for _, cell := range read(t, string(line), other, true) {
				if runs(cell) {
					t.Fatalf("%q: %q, split at %q with quotes, would run", line, cell, other)
				}
			}
		}
	})
}

// read are the cells of a line as a reader of CSV sees them.
func read(t *rapid.T, line string, comma rune, lazy bool) []string {
	r := csv.NewReader(strings.NewReader(line))
	r.Comma, r.LazyQuotes = comma, lazy
	cells, err := r.Read()
	if err != nil {
		t.Fatal(err)
	}
	return cells
}

func runs(cell string) bool {
	bare := strings.TrimLeftFunc(cell, func(r rune) bool { return r == '"' || unicode.IsSpace(r) })
	return bare != "" && !plain.Signed(bare) && strings.ContainsRune("=+-@＝", []rune(bare)[0])
}
