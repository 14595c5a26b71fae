package calc_test

import (
	"bytes"
	"cmp"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
)

var update = flag.Bool("update", false, "write docs/validation.json anew")

const recordFile = "../docs/validation.json"

// record holds the results of a run's checks for docs/validation.md.
var record = validation{checks: map[string]bool{}}

type validation struct {
	Measured []measurement `json:"measured"`
	Places   []place       `json:"places"`
	Sources  []source      `json:"sources"`
	Checks   []checked     `json:"checks"`

	checks map[string]bool
}

// measurement is an outside value next to a figure of the program with its band. Measurements with the same
// Quantity are shown together.
type measurement struct {
	Quantity string  `json:"quantity"`
	What     string  `json:"what"`
	Inputs   string  `json:"inputs"`
	Source   string  `json:"source"`
	Known    string  `json:"known"` // read, memory high, memory medium, practice
	Unit     string  `json:"unit"`
	Outside  float64 `json:"outside"`
	Low      float64 `json:"outside_low"` // the range, if the source gives one, otherwise the value
	High     float64 `json:"outside_high"`
	Computed float64 `json:"computed"`
	From     float64 `json:"computed_low"`
	To       float64 `json:"computed_high"`
	Inside   bool    `json:"inside"` // the outside value lies in the computed band
}

// place is an outside observation without a number, next to what the program says.
type place struct {
	What   string `json:"what"`
	Source string `json:"source"`
	Known  string `json:"known"`
	Seen   string `json:"seen"`
	Says   string `json:"says"`
}

// source says where the checks of a test come from: the test's comment.
type source struct {
	Test  string `json:"test"`
	Text  string `json:"text"`
	Known string `json:"known"`
}

// checked is a check of a formula, a row or a rule: the computed value and its limits.
type checked struct {
	Test     string  `json:"test"`
	What     string  `json:"what"`
	Computed float64 `json:"computed"`
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
}

func (v *validation) check(t *testing.T, what string, got, low, high float64) {
	if v.checks[t.Name()] {
		return
	}
	v.checks[t.Name()] = true
	test, _, _ := strings.Cut(t.Name(), "/")
	v.Checks = append(v.Checks, checked{test, what, digits(got), digits(low), digits(high)})
}

// digits keeps five significant digits; more would differ between machines.
func digits(v float64) float64 {
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 5, 64), 64) // a formatted number always parses
	return v
}

// measured records an outside value, or a range, next to a figure.
func measured(t *testing.T, m measurement, f calc.Figure) {
	t.Helper()
	if m.Low == 0 {
		m.Low, m.High = m.Outside, m.Outside
	}
	if !(f.Low <= f.Value && f.Value <= f.High && m.Low <= m.Outside && m.Outside <= m.High && m.Low > 0) {
		t.Errorf("%s, %s: no value with its band: %+v, %+v", m.Quantity, m.What, m, f)
	}
	m.Inside = m.Outside >= f.Low && m.Outside <= f.High
	m.Outside, m.Low, m.High = digits(m.Outside), digits(m.Low), digits(m.High)
	m.Computed, m.From, m.To = digits(f.Value), digits(f.Low), digits(f.High)
	record.Measured = append(record.Measured, m)
}

// recorded compares docs/validation.json with the record, or writes it.
func recorded() int {
	if err := record.sourced(); err != nil {
		fmt.Println(err)
		return 1
	}
	slices.SortStableFunc(record.Checks, func(a, b checked) int {
		return cmp.Or(strings.Compare(a.Test, b.Test), strings.Compare(a.What, b.What))
	})
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(record); err != nil {
		fmt.Println(err)
		return 1
	}
	if *update {
		if err := os.WriteFile(recordFile, b.Bytes(), 0o644); err != nil {
			fmt.Println(err)
			return 1
		}
		return 0
	}
	if have, err := os.ReadFile(recordFile); err != nil || !bytes.Equal(have, b.Bytes()) {
		fmt.Printf("docs/validation.json is not what was found (%v); after a change that is meant: "+
			"go test ./calc_test -update, then go test ./docs -run Validation -update\n", err)
		return 1
	}
	return 0
}

var saysKnown = regexp.MustCompile(`\b(read|memory (?:high|medium|low)|worked|no source)\b`)

// sourced finds the comment of each test that made a check, and in it the words for how its source is known.
func (v *validation) sourced() error {
	files, err := filepath.Glob("*_test.go")
	if err != nil {
		return err
	}
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !slices.ContainsFunc(v.Checks, func(c checked) bool { return c.Test == fn.Name.Name }) {
				continue
			}
			text := strings.Join(strings.Fields(fn.Doc.Text()), " ")
			var known []string
			for _, k := range saysKnown.FindAllString(text, -1) {
				if !slices.Contains(known, k) {
					known = append(known, k)
				}
			}
			v.Sources = append(v.Sources, source{fn.Name.Name, text, strings.Join(known, ", ")})
		}
	}
	return nil
}
