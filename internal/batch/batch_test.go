package batch

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

// Each row has the figures of its own card, in the order of the rows.
func TestEveryRowHasItsOwnCard(t *testing.T) {
	text, jobs := benchRows(60, CSV)
	out, tally, err := answers(t, text, testOptions(CSV))
	if err != nil || tally.Answered != len(jobs) {
		t.Fatal(tally, err)
	}
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || len(rows) != len(jobs)+1 {
		t.Fatal(len(rows), err)
	}
	head := map[string]int{}
	for i, name := range rows[0] {
		head[name] = i
	}
	for i, job := range jobs {
		card, err := calc.Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		row := rows[i+1]
		if row[head["id"]] != strconv.Itoa(i) || row[head["error"]] != "" || row[head["verdict"]] != card.Verdict() {
			t.Errorf("row %d: %q", i, row[:8])
		}
		for _, f := range card.Figures {
			at, ok := head[f.Name+" ("+f.Unit+")"]
			if !ok {
				t.Fatalf("%s (%s) has no column", f.Name, f.Unit)
			}
			for k, want := range [...]float64{f.Value, f.Low, f.High} {
				if got := row[at+k]; got != strconv.FormatFloat(want, 'g', 6, 64) {
					t.Errorf("row %d, %s: %s, want %g", i, rows[0][at+k], got, want)
				}
			}
		}
	}
}

// Every figure of any card has its columns.
func TestEveryFigureHasItsColumn(t *testing.T) {
	deep.Turn(t)
	for _, m := range tables.Metals {
		for _, joint := range tables.Joints {
			for _, mode := range tables.Modes {
				job := calc.Job{Metal: m.ID, Thickness: calc.Some(1.5), Joint: joint.ID, Mode: mode.ID,
					Feed: calc.Some(5), Travel: calc.Some(7)}
				if mode.ID == "timed" {
					job.Travel = calc.Opt{}
				}
				if card, err := calc.Solve(job); err == nil {
					if _, err := figureCells(&card); err != nil {
						t.Errorf("%+v: %v", job, err)
					}
				}
			}
		}
	}
}

func TestJSONLinesAreTheCards(t *testing.T) {
	text, _ := benchRows(12, JSONLines)
	out, _, err := answers(t, text, testOptions(JSONLines))
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range strings.Split(strings.TrimSuffix(out, "\n"), "\n") {
		var doc struct{ Job calc.Job }
		if err := json.Unmarshal([]byte(line), &doc); err != nil {
			t.Fatal(err)
		}
		card, err := calc.Solve(doc.Job)
		if err != nil {
			t.Fatal(err)
		}
		whole, err := report.JSON(report.Card(&card), "test")
		if err != nil {
			t.Fatal(err)
		}
		var want bytes.Buffer
		if err := json.Compact(&want, whole); err != nil {
			t.Fatal(err)
		}
		given := strings.Split(text, "\n")[i]
		if line != `{"input":`+given+","+want.String()[1:] {
			t.Errorf("line %d: %.200s", i, line)
		}
	}
}

func TestBadRowsAreNamed(t *testing.T) {
	for _, c := range []struct {
		format     Format
		text       string
		line       int
		what, hint string
	}{
		{CSV, "metal,gauge,feed,travel\ngalvanized,18ga,5,8\ngalvanized,banana,5,8\n", 3, "line 3, gauge: ",
			"type 16ga"},
		{CSV, "metal,feed,travel\nunobtainium,5,8\n", 2, "line 2, metal: no metal is called",
			"see brazebooth tables metals"},
		{CSV, "gauge,feed,travel\n\n18ga,5\n", 3, "line 3: wrong number of fields", "write 3 cells"},
		{CSV, "gauge,feed,travel\n18\"ga,5,8\n", 2, "line 2: bare", "double the quotes"},
		{CSV, "gauge,fed\n18ga,5\n", 1, "line 1, fed: ", "type feed"},
		{CSV, "gauge,wire_feed\n18ga,5\n", 1, "line 1, wire_feed: ", "--carry wire_feed"},
		{CSV, "gauge,gauge\n18ga,5\n", 1, "line 1, gauge: two columns", "leave one out"},
		{CSV, "id,note\n1,x\n", 1, "line 1: no column is a choice", "metal,gauge,joint"},
		{CSV, "", 1, "line 1: no line with", "metal,gauge,joint"},
		{CSV, "metal,gauge,feed,travel\ngalvanized,7ga,5,8\n", 2, "line 2: gauge: the GSG system has no 7 ga", ""},
		{CSV, "id,metal,gauge,feed,travel\n1,galvanized,18ga,5,8\n2,,,,\n", 3, "line 3, metal: none is given",
			"every row"},
		{CSV, "metal,gauge,feed\n,18ga,5\n", 2, "line 2, metal: none is given", "every row"},
		{CSV, "metal,gauge,feed\nmild-steel,,5\n", 2, "line 2, gauge: none is given", "18ga"},
		{JSONLines, "{\"id\":1}\n", 1, "line 1, metal: none is given", "every row"},
		{JSONLines, "{\"gauge\":\"18ga\"\n", 1, "line 1: this JSON is broken", "write one object"},
		{JSONLines, "\n[1]\n", 2, "line 2: this is not a JSON object", "write one object"},
		{JSONLines, "{\"gauge\":[18]}\n", 1, "line 1, gauge: neither", "write {"},
		{JSONLines, "{\"gauge\":18,\"gauge\":20}\n", 1, "line 1, gauge: this name occurs twice", "leave one out"},
		{JSONLines, "{\"gauge\":18} {}\n", 1, "line 1: something follows", "write one object"},
		{JSONLines, "{\"guage\":18}\n", 1, "line 1, guage: ", "type gauge"},
		{CSV, "id,metal,gauge,feed,travel\n1,hsla,18ga,5,8\nT\xfcre,hsla,18ga,5,8\n", 3,
			"line 3, id: letters that are not UTF-8", "save it as UTF-8"},
		{CSV, "id,gauge,T\xfcr\n", 1, "line 1: letters that are not UTF-8", "save it as UTF-8"},
		{CSV, "\xff\xfeg\x00a\x00u\x00g\x00e\x00\n\x00", 1, "line 1: letters that are not UTF-8", "save it as UTF-8"},
		{CSV, "note,metal,gauge,feed,travel\n1,hsla,18ga,5,8\n\n2" + strings.Repeat("x", limit+8192) + ",18ga,5,8\n", 4,
			"line 4: row longer", "close the quote"},
		{CSV, "note,metal,gauge,feed,travel\n\"a\nb\",hsla,18ga,5,8\n\r\n\"2" + strings.Repeat("x\n", limit) +
			"\",18ga,5,8\n", 5, "line 5: row longer", "close the quote"},
		{CSV, "gauge," + strings.Repeat("x", limit+8192), 1, "line 1: row longer", "columns' names"},
		{JSONLines, "{\"metal\":\"hsla\",\"gauge\":18,\"feed\":5,\"travel\":8}\n{\"id\":\"T\xfcre\"}\n", 2,
			"line 2: letters that are not UTF-8", "save it as UTF-8"},
		{JSONLines, "{\"note\":\"" + strings.Repeat("x", limit) + "\"}\n", 1, "line 1: row longer", "one object"},
	} {
		_, _, err := answers(t, c.text, testOptions(c.format))
		f := mistake.Of(err)
		if f == nil || !strings.HasPrefix(f.What, fmt.Sprintf("line %d", c.line)) || !strings.HasPrefix(f.What,
			c.what) ||
			!strings.Contains(f.Hint, c.hint) || f.Hint == "" {
			t.Errorf("%.60q: %v, want line %d, %q, %q", c.text, err, c.line, c.what, c.hint)
		}
	}
}

// A quotation without an end does not exhaust the machine's memory.
func TestAnOpenQuoteEnds(t *testing.T) {
	endless := io.MultiReader(strings.NewReader("gauge,note\n18ga,\""), io.LimitReader(letters{}, 50*limit))
	_, err := Run(context.Background(), endless, io.Discard, testOptions(CSV))
	if f := mistake.Of(err); f == nil || f.What != "line 2: "+tooLong {
		t.Errorf("got %v", err)
	}
}

type letters struct{}

func (letters) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'x'
	}
	return len(p), nil
}

func TestRowsBeforeABadOneAreWritten(t *testing.T) {
	out, tally, err := answers(t,
		"id,metal,gauge,feed,travel\na,hsla,18ga,5,8\nb,hsla,18ga,5,8\nc,hsla,44,5,8\nd,hsla,18ga,5,8\n",
		testOptions(CSV))
	if err == nil || tally.Answered != 2 || strings.Count(out, "\n") != 3 || strings.Contains(out, "\nd,") {
		t.Errorf("%+v, %v:\n%s", tally, err, out)
	}
}

func TestKeepGoingSaysWhy(t *testing.T) {
	for f, text := range map[Format]string{
		CSV: "id,metal,gauge,feed,travel\na,hsla,18ga,5,8\n=b,hsla,44,5,8\nc,hsla,18ga,5\nd,hsla,18ga,5,8\n",
		JSONLines: "{\"metal\":\"hsla\",\"gauge\":18,\"feed\":5,\"travel\":8}\n{\"gauge\":44}\nnonsense\n" +
			"{\"metal\":\"hsla\",\"gauge\":18,\"feed\":5,\"travel\":8}\n",
	} {
		o := testOptions(f)
		var told []int
		o.KeepGoing, o.Bad = true, func(f *mistake.Error) {
			var line int
			if _, err := fmt.Sscanf(f.What, "line %d", &line); err != nil {
				t.Errorf("%s: %v", f.What, err)
			}
			told = append(told, line)
		}
		out, tally, err := answers(t, text, o)
		if err != nil || tally.Answered != 2 || tally.Bad != 2 || len(told) != 2 || told[1] != told[0]+1 {
			t.Errorf("%s: %+v, %v, told of %v", f, tally, err, told)
		}
		if !strings.Contains(out, "a gauge is a number from 7 to 30") {
			t.Errorf("%s does not say why:\n%s", f, out)
		}
		if f == CSV {
			if rows, err := csv.NewReader(strings.NewReader(out)).ReadAll(); err != nil || len(rows) != 5 ||
				rows[2][0] != "'=b" {
				t.Errorf("%q, %v", rows, err)
			}
		}
	}
}

// A text that a spreadsheet would run as a formula is escaped in the answer. A number with a sign stays a number, and a
// text that an earlier answer escaped is read unescaped.
func TestFormulasAreEscaped(t *testing.T) {
	out, _, err := answers(t,
		"note,aim,metal,gauge,feed,travel\n=HYPERLINK(1),-0.5,hsla,18ga,5,8\n'=1,'-0.5mm,hsla,18ga,5,8\n\"a\n"+
			"b\x1b[31m\",0,hsla,18ga,5,8\n", testOptions(CSV))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [][2]string{{"'=HYPERLINK(1)", "-0.5"}, {"'=1", "'-0.5mm"}, {"a b", "0"}} {
		if rows[i+1][0] != want[0] || rows[i+1][1] != want[1] {
			t.Errorf("row %d: %q, want %q", i, rows[i+1][:2], want)
		}
	}
}

// Spreadsheets write semicolons, tabs and a byte order mark.
func TestWhatSpreadsheetsWrite(t *testing.T) {
	for _, text := range []string{"\ufeffGauge;Feed;Travel;Metal\r\n18ga;5,2;8;hsla\r\n",
		"gauge\tfeed\ttravel\tmetal\n18ga\t5.2\t8\thsla\n"} {
		out, tally, err := answers(t, text, testOptions(CSV))
		if err != nil || tally.Answered != 1 || !strings.Contains(out, string(text[strings.IndexAny(text,
			";\t")])+"5.2") {
			t.Errorf("%q: %+v, %v\n%s", text, tally, err, out)
		}
	}
}

// However long the table is, only a few rows are in memory at a time.
func TestFewRowsInMemory(t *testing.T) {
	text, _ := benchRows(400, CSV)
	o := testOptions(CSV)
	var begun, done, most atomic.Int64
	card, err := calc.Solve(calc.Job{Feed: calc.Some(5), Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	o.Solve = func(context.Context, calc.Job, string) (calc.Card, error) {
		if n := begun.Add(1) - done.Load(); n > most.Load() {
			most.Store(n)
		}
		return card, nil
	}
	o.Done = func(int) { done.Add(1) }
	if _, _, err := answers(t, text, o); err != nil || most.Load() > int64(5*o.Workers+2) {
		t.Errorf("%d rows at a time, %v", most.Load(), err)
	}
}

func TestABatchCanBeCancelled(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	o := testOptions(CSV)
	o.Done = func(rows int) {
		if rows == 3 {
			stop()
		}
	}
	text, _ := benchRows(200, CSV)
	if tally, err := Run(ctx, strings.NewReader(text), io.Discard, o); !errors.Is(err, context.Canceled) ||
		tally.Answered < 3 || tally.Answered > 60 {
		t.Errorf("%+v, %v", tally, err)
	}
}

// waiting is a reader that gives a text and then blocks, like a pipe whose other end stays open.
func waiting(t *testing.T, text string) io.Reader {
	in, out := io.Pipe()
	t.Cleanup(func() { _ = out.Close() })
	go func() { _, _ = io.WriteString(out, text) }()
	return in
}

// An input that stays open and silent blocks neither cancelling nor the end after a bad row or on a full disk.
func TestSilentInputDoesNotBlock(t *testing.T) {
	for f, rows := range map[Format][2]string{
		CSV:       {"metal,gauge,feed,travel\nhsla,18ga,5,8\n", "hsla,44ga,5,8\n"},
		JSONLines: {`{"metal":"hsla","gauge":18,"feed":5,"travel":8}` + "\n", `{"gauge":44}` + "\n"},
	} {
		ctx, stop := context.WithCancel(context.Background())
		o := testOptions(f)
		o.Done = func(int) { stop() }
		if tally, err := Run(ctx, waiting(t, rows[0]), io.Discard, o); !errors.Is(err, context.Canceled) ||
			tally.Answered != 1 {
			t.Errorf("%s, given up: %+v, %v", f, tally, err)
		}
		if tally, err := Run(context.Background(), waiting(t, rows[0]+rows[1]), io.Discard,
			testOptions(f)); mistake.Of(err) == nil || tally.Answered != 1 {
			t.Errorf("%s, a bad row: %+v, %v", f, tally, err)
		}
		if _, err := Run(context.Background(), waiting(t, rows[0]), &full{300}, testOptions(f)); err == nil ||
			err.Error() != "no room" {
			t.Errorf("%s, a full disk: %v", f, err)
		}
		gone, cancel := context.WithCancel(context.Background())
		cancel()
		if _, err := Run(gone, waiting(t, ""), io.Discard, testOptions(f)); !errors.Is(err, context.Canceled) {
			t.Errorf("%s, before the first row: %v", f, err)
		}
	}
}

// Invalid text is not lost silently: its row is refused, and keeps its place in the output.
func TestForeignLettersAreMarked(t *testing.T) {
	for f, text := range map[Format]string{
		CSV: "id,metal,gauge,feed,travel\nT\xfcre,hsla,18ga,5,8\nTüre,hsla,18ga,5,8\n",
		JSONLines: "{\"id\":\"T\xfcre\",\"gauge\":18}\n" +
			"{\"id\":\"Türe\",\"metal\":\"hsla\",\"gauge\":18,\"feed\":5,\"travel\":8}\n",
	} {
		o := testOptions(f)
		o.KeepGoing = true
		out, tally, err := answers(t, text, o)
		if err != nil || tally.Answered != 1 || tally.Bad != 1 {
			t.Errorf("%s: %+v, %v", f, tally, err)
		}
		if strings.Contains(out, "Tre") || !strings.Contains(out, "Türe") || !strings.Contains(out, "T\ufffdre") ||
			!strings.Contains(out, "save it as UTF-8") {
			t.Errorf("%s:\n%.300s", f, out)
		}
	}
}

// full is a writer to a disk with room for left bytes.
type full struct{ left int }

func (f *full) Write(p []byte) (int, error) {
	if f.left -= len(p); f.left < 0 {
		return 0, errors.New("no room")
	}
	return len(p), nil
}

func TestAFullDiskEndsIt(t *testing.T) {
	text, _ := benchRows(50, CSV)
	if _, err := Run(context.Background(), strings.NewReader(text), &full{9000}, testOptions(CSV)); err == nil ||
		err.Error() != "no room" {
		t.Errorf("got %v", err)
	}
}

func FuzzRows(f *testing.F) {
	for _, s := range []string{"gauge,feed,travel\n18,5,8\n", "gauge;note\n18;\"", "{\"gauge\":18}\n", "{\"gauge\":{}}",
		"\ufeffgauge\n=1\n", "gauge\n\"a\"b\n"} {
		f.Add(s)
	}
	card, err := calc.Solve(calc.Job{Feed: calc.Some(5), Travel: calc.Some(8)})
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, format := range [...]Format{CSV, JSONLines} {
			o := testOptions(format)
			o.KeepGoing = true
			o.Solve = func(context.Context, calc.Job, string) (calc.Card, error) { return card, nil }
			out, tally, err := answers(t, text, o)
			if err != nil {
				continue
			}
			want := tally.Answered + tally.Bad
			if format == CSV {
				want++
			}
			if got := strings.Count(out, "\n"); got != want {
				t.Fatalf("%q: %d lines for %+v", text, got, tally)
			}
			if strings.ContainsAny(out, "\x1b\x00") {
				t.Fatalf("%q: %q", text, out)
			}
		}
	})
}
