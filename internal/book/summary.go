package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/plain"
)

// listed is the part of a card that a list shows; its figures and reasons, which are most of the body, are not read.
type listed struct {
	Name string   `json:"name"`
	Tags []string `json:"tags" cut:"24"`
	Note string   `json:"note" cut:"2000"`
	Card struct {
		Used  calc.Job `json:"used"`
		Warns []warned `json:"warnings"`
	} `json:"card"`
}

type warned struct {
	Severity calc.Severity `json:"severity"`
}

// summary is a record's name, its line in lists, and its text for the search index; all are safe for a terminal.
func summary(r *Revision) (name, line, text string) {
	switch r.Kind {
	case CardKind:
		c, err := Body[listed](r)
		if err != nil {
			break
		}
		name, line, text = c.Name, jobLine(&c.Card.Used), strings.Join(c.Tags, " ")+" "+c.Note
		if slices.Contains(c.Card.Warns, warned{calc.Stop}) {
			line = "STOP " + line
		}
	case TrialKind:
		t, _ := Body[Trial](r)
		name, line, text = t.Verdict, strings.TrimPrefix(strings.TrimSpace(t.Seen+" "+t.Peel)+", "+t.Line(),
			", "), t.Note+" "+t.Source+" "+t.Card
	case ReadingKind:
		d, _ := Body[Reading](r)
		name, line, text = d.Source, d.Filler+" "+d.Mode, d.Lot+" "+d.Note
		if p := &d.Pull; p.Force > 0 {
			line = fmt.Sprintf("pulled: %s kN on %s mm, broke in the %s; %s", short(p.Force), short(p.Length),
				p.Broke, p.For)
		}
	case SourceKind:
		s, _ := Body[Source](r)
		name, line = s.Name, s.Note
	case SpoolKind:
		s, _ := Body[Spool](r)
		name, line = s.Lot, strings.TrimSpace(fmt.Sprintf("%s %smm, %.0f of %.0f g left %s", s.Filler, short(s.Wire),
			s.Left, s.Full, s.Note))
	case PersonKind:
		p, _ := Body[Person](r)
		name = p.Name
	case PracticeKind:
		p, _ := Body[practice.Outcome](r)
		name, line = fmt.Sprintf("level %d seed %d", p.Level, p.Seed), p.Short()
	}
	name, line = plain.Line(name, nameWidth), plain.Line(line, lineWidth)
	return name, line, name + " " + line + " " + text
}

// Line is the card's job in a few words.
func (c *Card) Line() string { return plain.Line(jobLine(&c.Card.Used), lineWidth) }

// Line is how the bead was laid, in a few words.
func (t *Trial) Line() string {
	j := &t.Job
	parts := []string{jobLine(j)}
	for _, s := range [...]struct {
		o    calc.Opt
		unit string
	}{{j.Feed, "m/min"}, {j.Volts, "V"}, {j.Travel, "mm/s"}, {j.StickOut, "mm stick-out"}} {
		if s.o.Set {
			parts = append(parts, short(s.o.V)+" "+s.unit)
		}
	}
	return plain.Line(strings.Join(parts, ", "), lineWidth)
}

func jobLine(j *calc.Job) string {
	size := ""
	switch {
	case j.Gauge != 0:
		size = strconv.Itoa(j.Gauge) + "ga"
	case j.Thickness.Set:
		size = short(j.Thickness.V) + "mm"
	}
	parts := []string{j.Metal, size, j.Joint}
	if j.Metal2 != "" && j.Metal2 != j.Metal {
		parts = append(parts, "on "+j.Metal2)
	}
	parts = append(parts, j.Filler, short(j.Wire.V)+"mm", j.Mode)
	return strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
}

// short is a number with three digits, enough for a list.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }

// words are the words of a text for the search index: each once, in lower case.
func words(text string) []string {
	seen := map[string]bool{}
	var list []string
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '.' && r != '-'
	}) {
		w = strings.Trim(w, ".-")
		if w == "" || seen[w] || len(list) >= 64 {
			continue
		}
		if r := []rune(w); len(r) > 32 {
			w = string(r[:32])
		}
		seen[w] = true
		list = append(list, w)
	}
	return list
}
