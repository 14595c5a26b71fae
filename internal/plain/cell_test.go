package plain

import (
	"encoding/csv"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

func TestCell(t *testing.T) {
	for in, want := range map[string]string{
		"lid seam": "lid seam", "=1+1": "'=1+1", "-3": "'-3", "+": "'+", "@sum": "'@sum", "\tx": "'\tx", "\rx": "'\rx",
		" =1": "' =1", "＝1": "'＝1", "'quoted": "''quoted", "16ga": "16ga", "": "",
		"lid, rim; 4-5 mm": "lid, rim; 4-5 mm",
		"x;=1":             "x;'=1", "x,=1": "x,'=1", "x\t=1": "x\t'=1", "x\n=1": "x\n'=1",
		"x; =1": "x;' =1", `x;"=1`: `x;'"=1`,
		`"=1`:   `'"=1`,
		"x;'=1": "x;''=1", ";=1": ";'=1", "=1;=2": "'=1;'=2", "x;-5": "x;'-5", "\u200b=1": "'\u200b=1",
		"\xff=1": "'\xff=1",
	} {
		if got := Cell(in); got != want {
			t.Errorf("Cell(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestSigned(t *testing.T) {
	for text, want := range map[string]bool{
		"-5": true, "+5.2": true, "-5,2": true, "5": true, ".5": true, "-1e5": true, "-1E-5": true, "5.": true,
		"": false, "-": false, "+e5": false, "-5e": false, "-5,2,1": false, "--5": false, "-Inf": false, "+nan": false,
		"-0x1p4": false, "-1_0": false,
		"-5 ": false, " -5": false, "-5+1": false, "-5e+-1": false, "-5;": false, "1e5e5": false,
	} {
		if Signed(text) != want {
			t.Errorf("Signed(%q) is %v", text, !want)
		}
	}
}

// odd are texts with special characters of tables and spreadsheets.
var odd = rapid.Custom(func(t *rapid.T) string {
	return strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"=", "+", "-", "@", "|", "%", "＝", "＋", "－", "＠", "﹣",
		"−", "'", "''", `"`, `""`,
		",", ";", "\t", "\r", "\n", "\v", "\u2028", " ", "\u00a0", "\u3000", "\u200b", "\x00", "\xff", "x", "5", "cmd",
		"ä"}), 0, 9).Draw(t, "signs"), "")
})

func TestUncellUndoesCell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(odd, rapid.String()).Draw(t, "text")
		c := Cell(s)
		if Uncell(c) != s {
			t.Fatalf("%q, %q, %q", s, c, Uncell(c))
		}
		for _, piece := range strings.FieldsFunc(c, func(r rune) bool { return strings.ContainsRune(parting, r) }) {
			if runs(piece) {
				t.Fatalf("%q in %q would run", piece, c)
			}
		}
	})
}

// runs reports whether a spreadsheet may see a formula: by the first character after blanks and quotes.
func runs(cell string) bool {
	cell = strings.TrimLeftFunc(cell, func(r rune) bool {
		return r == '"' || unicode.IsSpace(r) || !unicode.IsGraphic(r) || r == unicode.ReplacementChar
	})
	return cell != "" && !Signed(cell) && strings.ContainsRune("=+-@|%＝＋－＠﹣−", []rune(cell)[0])
}

// A table with commas is harmless to a program that splits it at commas, semicolons or tabs, with quotes or without.
func TestTablesAreHarmlessToEveryReader(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var out strings.Builder
		w := csv.NewWriter(&out)
		row := rapid.SliceOfN(odd, 1, 4).Draw(t, "row")
		for i := range row {
			row[i] = Cell(row[i])
		}
		if err := w.Write(row); err != nil {
			t.Fatal(err)
		}
		w.Flush()
		for _, comma := range ",;\t" {
			for _, quotes := range [...]bool{false, true} {
				for _, cell := range parted(out.String(), comma, quotes) {
					if runs(cell) {
						t.Fatalf("%q runs after splitting %q at %q, quotes %v", cell, out.String(), comma, quotes)
					}
				}
			}
		}
	})
}

// parted splits a table as leniently as a spreadsheet: a quotation starts where a cell begins and ends at the next
// single quote; the text after that still belongs to the cell.
func parted(text string, comma rune, quotes bool) []string {
	var cells []string
	var cell strings.Builder
	fresh, within := true, false
	signs := []rune(text)
	for i := 0; i < len(signs); i++ {
		r := signs[i]
		switch {
		case within && r == '"' && i+1 < len(signs) && signs[i+1] == '"':
			cell.WriteRune('"')
			i++
		case within && r == '"':
			within = false
		case within:
			cell.WriteRune(r)
		case quotes && fresh && r == '"':
			within, fresh = true, false
		case r == comma || r == '\n' || r == '\r':
			cells = append(cells, cell.String())
			cell.Reset()
			fresh = true
		default:
			cell.WriteRune(r)
			fresh = false
		}
	}
	return append(cells, cell.String())
}

func FuzzCell(f *testing.F) {
	for _, s := range []string{"=1+1", "'x", "''=x", "", "tank", "-3", "x;=1", "x,'=1", "\t'\t="} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c := Cell(s)
		if Uncell(c) != s {
			t.Fatalf("%q → %q → %q", s, c, Uncell(c))
		}
		if c != "" && strings.ContainsRune("=+-@\t\r\n", rune(c[0])) {
			t.Fatalf("%q would run", c)
		}
	})
}
