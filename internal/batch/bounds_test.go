package batch

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"sync/atomic"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// named is a good row, for CSV with its head, with n more names, which are copied or unknown.
func named(f Format, n int, carry bool) (text string, names []string) {
	for i := range n {
		names = append(names, fmt.Sprintf("x%d", i))
	}
	if f == CSV {
		text = strings.Join(append([]string{"metal", "gauge", "feed", "travel"}, names...), ",") + "\nhsla,18ga,5,8" +
			strings.Repeat(",1", n) + "\n"
	} else {
		text = `{"metal":"hsla","gauge":"18ga","feed":5,"travel":8`
		if n > 0 {
			text += `,"` + strings.Join(names, `":1,"`) + `":1`
		}
		text += "}\n"
	}
	if !carry {
		names = nil
	}
	return text, names
}

// A row may have a few hundred names besides the copied ones. Up to the limit the error is about its unknown names,
// above it about their number.
func TestNamesAreLimited(t *testing.T) {
	for _, f := range []Format{CSV, JSONLines} {
		own := 4
		most := mostNames + len(carried) - own
		for _, c := range []struct {
			n     int
			carry bool
			what  string
		}{
			{0, false, ""}, {1, false, "a card has no choice"}, {most, false, "a card has no choice"},
			{most + 1, false, "more than"}, {2 * most, false, "more than"}, {90000, false, "more than"},
			{1, true, ""}, {most, true, ""}, {most + 1, true, ""}, {5000, true, ""},
		} {
			text, names := named(f, c.n, c.carry)
			o := testOptions(f)
			o.Carry = names
			_, tally, err := answers(t, text, o)
			fault := mistake.Of(err)
			switch {
			case c.what == "" && (err != nil || tally.Answered != 1):
				t.Errorf("%s, %d names, carried %v: %v", f, c.n, c.carry, err)
			case c.what != "" && (fault == nil || !strings.Contains(fault.What, c.what) || fault.Hint == "" ||
				!strings.HasPrefix(fault.What, "line 1")):
				t.Errorf("%s, %d names: %v, want %q", f, c.n, err, c.what)
			}
		}
	}
}

// The cost of a row with very many names is bounded by the limit, not by their number.
func TestCostOfNamesIsBounded(t *testing.T) {
	for _, n := range []int{5000, 20000, 60000} {
		text, _ := named(JSONLines, n, false)
		took := testing.AllocsPerRun(3, func() { _, _ = members(1, []byte(text), 403) })
		if took > 20*403 {
			t.Errorf("%d names: %.0f allocations", n, took)
		}
	}
}

// A value that is too long or of the wrong type is refused with its column, and the next row is answered.
func TestValuesAreLimited(t *testing.T) {
	deep.Turn(t)
	long := func(s string, n int) string { return strings.Repeat(s, n/len(s)) }
	const much = 600 << 10
	for _, c := range []struct{ value, what string }{
		{`"18ga` + long(" ", mostText-4) + `"`, ""}, {`"18ga` + long(" ", mostText-3) + `"`, "longer than any choice"},
		{`"` + long("x,", much) + `"`, "longer than any choice"},
		{"1" + long("0", mostText-1), "gauge"}, {"1" + long("0", mostText), "longer than any choice"},
		{"1" + long("0", much), "longer than any choice"}, {"0." + long("3", much), "longer than any choice"},
		{"1e99999", ""}, {"-1e-99999", ""}, {"1e" + long("9", much), "longer than any choice"}, {`"1e99999mm"`, ""},
		{long("[", 9000) + long("]", 9000), "neither a text nor a number"}, {long("[", 300<<10) + long("]", 300<<10),
			"broken"}, {`{"a":` + long("[", much) + "}", "broken"},
		{"[" + long("0,", much) + "0]", "neither a text nor a number"}, {"true", "neither a text nor a number"},
		{"{}", "neither a text nor a number"},
	} {
		for _, name := range []string{"gauge", "hazard", "feed"} {
			text := `{"metal":"hsla","` + name + `":` + c.value + "}\n" +
				`{"metal":"hsla","gauge":18,"feed":5,"travel":8}` + "\n"
			o := testOptions(JSONLines)
			var told []*mistake.Error
			o.KeepGoing, o.Bad = true, func(f *mistake.Error) { told = append(told, f) }
			_, tally, err := answers(t, text, o)
			if err != nil || tally.Answered+tally.Bad != 2 || tally.Answered == 0 {
				t.Errorf("%s: %.30s: %+v, %v", name, c.value, tally, err)
			}
			if c.what == "" || c.what == "gauge" {
				continue
			}
			if len(told) != 1 || !strings.Contains(told[0].What, c.what) || told[0].Hint == "" || c.what != "broken" &&
				!strings.HasPrefix(told[0].What, "line 1, "+name+": ") {
				t.Errorf("%s: %.30s: told %v, want %q", name, c.value, told, c.what)
			}
		}
	}
	for _, cell := range []string{long("9", much), `"` + long("x,", much) + `"`, long("tank", much)} {
		_, _, err := answers(t, "metal,gauge,hazard\nhsla,18ga,"+cell+"\n", testOptions(CSV))
		if f := mistake.Of(err); f == nil || f.What != "line 2, hazard: longer than any choice" {
			t.Errorf("%.20s: %v", cell, err)
		}
	}
}

// Once a batch is cancelled no further row is started, however many were read already.
func TestNoRowStartsAfterCancelling(t *testing.T) {
	card, err := calc.Solve(calc.Job{Feed: calc.Some(5), Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []Format{CSV, JSONLines} {
		text, _ := benchRows(500, f)
		for _, workers := range []int{1, 2, 8} {
			for _, at := range []int{1, 40} {
				ctx, stop := context.WithCancel(context.Background())
				var late atomic.Int64
				o := testOptions(f)
				o.Workers = workers
				o.Solve = func(ctx context.Context, _ calc.Job, _ string) (calc.Card, error) {
					if ctx.Err() != nil {
						late.Add(1)
					}
					return card, nil
				}
				o.Done = func(rows int) {
					if rows == at {
						stop()
					}
				}
				tally, err := Run(ctx, strings.NewReader(text), io.Discard, o)
				if !errors.Is(err, context.Canceled) || tally.Answered != at || late.Load() > int64(workers) {
					t.Errorf("%s, %d workers, left at %d: %+v, %v, %d rows begun after that", f, workers, at, tally,
						err, late.Load())
				}
				stop()
			}
		}
	}
}

// The row that is being computed is cancelled too.
func TestARunningCardIsCancelled(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	o := testOptions(CSV)
	o.Workers = 1
	begun := 0
	o.Solve = func(ctx context.Context, job calc.Job, _ string) (calc.Card, error) {
		if begun++; begun == 2 {
			stop()
		}
		return calc.SolveContext(ctx, job)
	}
	text := "metal,gauge,metal2,gauge2,joint,wire\n" + strings.Repeat("copper,14ga,dp600,0.1mm,lap,2.4mm\n", 5)
	if tally, err := Run(ctx, strings.NewReader(text), io.Discard, o); !errors.Is(err, context.Canceled) ||
		tally.Answered > 1 || begun > 2 {
		t.Errorf("%+v, %v, %d begun", tally, err, begun)
	}
}
