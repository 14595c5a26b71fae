package batch

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"brazebooth/calc"
	"brazebooth/internal/plain"
)

// cellWidth is the longest copied text, in terminal cells.
const cellWidth = 400

// grid is a CSV table: names in the first line, then a job in each line.
type grid struct {
	choices
	in     *csv.Reader
	budget io.LimitedReader // limits the bytes of one row; at 0 the input ends, and in knows where the row began
	comma  byte
	names  []string
	places []int // of each name: the index of its choice, −1 for a column that is only copied
	last   int   // line of the row that was read last
}

const namesHint = "write the columns' names first: metal,gauge,joint"

// over reports whether a row, or the head, is longer than the limit.
func (s *grid) over() bool { return s.budget.N <= 0 }

func newGrid(in io.Reader, o *Options) (*grid, error) {
	s := &grid{choices: newChoices(o), budget: io.LimitedReader{R: in, N: limit + 1}, last: 1}
	buffered := bufio.NewReader(&s.budget)
	if bom, _ := buffered.Peek(3); string(bom) == "\ufeff" {
		_, _ = buffered.Discard(3)
	}
	s.comma, s.in = separator(firstLine(buffered)), csv.NewReader(buffered)
	s.in.Comma, s.in.ReuseRecord, s.in.TrimLeadingSpace = rune(s.comma), true, true
	names, err := s.in.Read()
	var bad *csv.ParseError
	switch {
	case s.over():
		return nil, at(1, "", tooLong, namesHint)
	case errors.Is(err, io.EOF):
		return nil, at(1, "", "no line with the columns' names", namesHint)
	case errors.As(err, &bad):
		return nil, at(1, "", bad.Err.Error(), namesHint)
	case err != nil:
		return nil, err
	}
	return s, s.read(slices.Clone(names))
}

// firstLine peeks at the first line, or the beginning of a long one, without blocking for more input.
func firstLine(in *bufio.Reader) []byte {
	for n := 1; ; n++ {
		_, err := in.Peek(n)
		have, _ := in.Peek(in.Buffered())
		if err != nil || bytes.IndexByte(have, '\n') >= 0 {
			return have
		}
		n = len(have)
	}
}

// separator is the character between columns; a spreadsheet with decimal commas uses semicolons.
func separator(text []byte) byte {
	first, _, _ := bytes.Cut(text, []byte("\n"))
	for _, sign := range [...]byte{',', '\t', ';'} {
		if bytes.IndexByte(first, sign) >= 0 {
			return sign
		}
	}
	return ','
}

func (s *grid) read(names []string) error {
	if len(names) > s.most() {
		return s.tooMany(1)
	}
	seen := map[string]bool{}
	for _, name := range names {
		if !utf8.ValidString(name) {
			return at(1, "", foreign, foreignHint)
		}
		name = strings.ToLower(strings.TrimSpace(plain.Uncell(name)))
		place, ok := s.place(name)
		switch {
		case !ok:
			return s.unknown(1, name)
		case seen[name]:
			return at(1, plain.Line(name, 40), "two columns have this name", "leave one out")
		}
		s.names, s.places, seen[name] = append(s.names, name), append(s.places, place), true
	}
	if slices.Max(s.places) < 0 {
		return at(1, "", "no column is a choice of a card", namesHint)
	}
	return nil
}

func (s *grid) next() (row, error) {
	s.budget.N = limit + 1
	cells, err := s.in.Read()
	var bad *csv.ParseError
	if err != nil && !errors.As(err, &bad) && !s.over() {
		return row{}, err
	}
	r := row{line: s.last + 1}
	switch {
	case bad != nil:
		r.line = bad.StartLine
	case len(cells) > 0:
		r.line, _ = s.in.FieldPos(0)
	}
	s.last = r.line
	if s.over() {
		return r, at(r.line, "", tooLong, "close the quote, or write one job on each line")
	}
	if bad != nil {
		r.fail("", bad.Err.Error(), "write "+strconv.Itoa(len(s.names))+
			" cells, as many as the first line has names, and double the quotes within quotes")
	}
	s.take(&r, cells)
	return r, nil
}

// take copies the cells into the row's echo and reads the job from them.
func (s *grid) take(r *row, cells []string) {
	var list []given
	for i, name := range s.names {
		if i > 0 {
			r.echo = append(r.echo, s.comma)
		}
		if i >= len(cells) {
			continue
		}
		text := cells[i]
		if !utf8.ValidString(text) {
			text = strings.ToValidUTF8(text, "\ufffd")
			r.fail(plain.Line(name, 40), foreign, foreignHint)
		}
		text = plain.Uncell(text)
		r.echo = s.appendCell(r.echo, plain.Line(text, cellWidth))
		if s.places[i] >= 0 && strings.TrimSpace(text) != "" {
			list = append(list, given{s.places[i], name, text})
		}
	}
	r.read(list)
}

// appendCell appends a text to its row as one cell that no program runs as a formula. A number with a sign stays
// unescaped.
func (s *grid) appendCell(to []byte, text string) []byte {
	if !plain.Signed(text) || s.bare(to) {
		text = plain.Cell(text)
	}
	if text == "" || strings.IndexByte(text, s.comma) < 0 && !strings.ContainsAny(text, "\"\r\n") && text[0] != ' ' &&
		text[0] != '\t' {
		return append(to, text...)
	}
	to = append(to, '"')
	to = append(to, strings.ReplaceAll(text, `"`, `""`)...)
	return append(to, '"')
}

// bare reports whether a program that splits this table at another separator could see a cell that begins here and
// continues after the number: the cells -5 and 2+cmd() of a table with commas are one cell, -5,2+cmd(), for a program
// that splits at semicolons, which would run it.
func (s *grid) bare(row []byte) bool {
	row = bytes.TrimRightFunc(row, func(r rune) bool { return unicode.IsSpace(r) || r == '"' })
	return len(row) == 0 || s.comma == '\t' && bytes.IndexByte([]byte(",;"), row[len(row)-1]) >= 0
}

// line is a row's copied cells, then more cells and the line break.
func (s *grid) line(own []byte, cells ...string) []byte {
	for _, text := range cells {
		own = s.appendCell(append(own, s.comma), text)
	}
	return append(own, '\n')
}

func (s *grid) head() []byte {
	cells := append(slices.Clone(s.names[1:]), "error", "verdict", "stop", "cautions", "assumed")
	for _, f := range figures {
		cells = append(cells, f.name+" ("+f.unit+")", f.name+" low", f.name+" high")
	}
	return s.line(s.appendCell(nil, s.names[0]), cells...)
}

func (s *grid) answer(r *row, card *calc.Card) ([]byte, error) {
	var stops, cautions, assumed []string // stops in full, since they must not be missed
	for i := range card.Warnings {
		switch w := &card.Warnings[i]; w.Severity {
		case calc.Stop:
			stops = append(stops, w.Text)
		case calc.Caution:
			cautions = append(cautions, w.Code)
		}
	}
	for i := range card.Assumed {
		assumed = append(assumed, card.Assumed[i].Field)
	}
	found, err := figureCells(card)
	words := []string{"", string(card.Verdict()), strings.Join(stops, " "), strings.Join(cautions, " "),
		strings.Join(assumed, " ")}
	return s.line(r.echo, append(words, found...)...), err
}

func (s *grid) refusal(r *row) []byte {
	cells := make([]string, 5+3*len(figures))
	cells[0] = plain.Line(r.fault.What+"; "+r.fault.Hint, cellWidth)
	return s.line(r.echo, cells...)
}

func (s *grid) mine(r *row, line []byte) bool {
	rest, ok := bytes.CutPrefix(line, r.echo)
	return ok && len(rest) > 0 && rest[0] == s.comma
}

func (s *grid) begins() string { return "" }
