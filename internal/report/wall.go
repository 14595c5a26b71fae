package report

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Wall is the content of a page to hang on the wall of a booth.
type Wall struct {
	Name  string
	Job   string     // metal, joint and wire in a line
	Card  *calc.Card // its figures, notes, warnings and verdict
	Map   *Map       // nil: no picture
	Note  string
	Foot  string // where the page comes from: id, date, version
	When  time.Time
	Comma bool // in numbers, instead of the point
}

// WallOf is a present card as a page for the wall.
func WallOf(card *calc.Card, name string, sys quantity.System) Wall {
	job := each(Head{Card: card}.words(Options{Units: sys}), func(l *Line) string { return l.Text })
	return Wall{Name: name, Job: strings.Join(job, "; "), Card: card}
}

// wallWords are the texts of a page, by their place on it.
type wallWords struct {
	rows                      map[string]*Row
	stops, settings, cautions []string
	assumed                   string
}

func (p *Wall) words(sys quantity.System) wallWords {
	say := wallWords{rows: map[string]*Row{}, assumed: AssumedText(p.Card.Assumed, sys.Lead())}
	blocks := []Block{Figures{Card: p.Card, List: p.Card.Figures}, Notes{p.Card.Notes}, Cautions{List: p.Card.Warnings}}
	for _, l := range Words(blocks, Options{Units: sys.Lead()}) {
		switch l.Kind {
		case FigureRow:
			say.rows[l.Row.Figure.Name] = l.Row
		case Setting:
			say.settings = append(say.settings, l.Lead+": "+l.Text)
		case Stop:
			say.stops = append(say.stops, l.Text)
			fallthrough
		case Caution, Note:
			say.cautions = append(say.cautions, textMarks[l.Kind]+l.Text)
		}
	}
	return say
}

// WallPDF prints a page for a black-and-white printer. Its settings can be read from two metres. It also returns the
// characters that its font does not have, which are replaced by question marks.
func WallPDF(p *Wall, paper Paper, sys quantity.System) (pdf []byte, replaced []rune, err error) {
	k, err := newInk(paper, p.When)
	if err != nil {
		return nil, nil, err
	}
	k.comma = p.Comma
	if say := p.words(sys); len(say.stops) > 0 {
		k.stopped(p, say.stops)
	} else if err := k.pages(p, &say, paper, sys); err != nil {
		return nil, nil, err
	}
	var out bytes.Buffer
	err = k.f.Output(&out)
	return out.Bytes(), k.missing, err
}

// pages prints the first page, the pages that continue it, and the map on a page of its own.
func (k *ink) pages(p *Wall, say *wallWords, paper Paper, sys quantity.System) error {
	if p.Map != nil {
		m := *p.Map
		m.Units = sys
		b, err := m.PNG(mapDPI)
		if err != nil {
			return err
		}
		k.f.RegisterImageOptionsReader(mapImage, fpdf.ImageOptions{ImageType: "png"}, bytes.NewReader(b))
	}
	rest := k.first(p, say)
	k.signature(p)
	k.more(p, rest)
	if p.Map != nil {
		k.mapSheet(p, paper)
	}
	return k.f.Error()
}

// stopped is the whole page of a job that must not be done: the stop in the largest letters, no setting, no signature.
func (k *ink) stopped(p *Wall, stops []string) {
	k.para(90, "B", "STOP")
	k.y += 6
	k.verbatim(20, "B", p.Name)
	k.para(10, "", p.Job)
	k.rule()
	for _, s := range stops {
		k.y += 3
		k.para(20, "", s)
	}
	k.text(edgeMM, k.h-edgeMM-8, 8, "", p.Foot)
}

// noteCells is how much of a note fits on the first page. A longer note is repeated in full on a later page.
const noteCells = 280

// first prints the first page and returns the cautions that did not fit.
func (k *ink) first(p *Wall, say *wallWords) (rest []string) {
	k.verbatim(22, "B", p.Name)
	k.para(10, "", p.Job)
	if say.assumed != "" {
		k.para(9, "", "Assumed, nobody chose it: "+say.assumed)
	}
	if p.Note != "" {
		k.verbatim(10, "", "Note: "+plain.Line(p.Note, noteCells))
	}
	k.rule()
	k.bigFigures(say)
	for _, s := range say.settings {
		k.para(10.5, "", s)
	}
	k.rule()
	k.middle(p, say)
	return k.cautions(say.cautions)
}

// wallFigures are the settings that are read from two metres away, in their order.
var wallFigures = [...]string{"wire_feed", "volts", "travel", "arc_on", "arc_off", "spot_step", "gas_flow", "stickout"}

// bigFigures are the settings, two in a row, with digits about 12 mm high.
func (k *ink) bigFigures(say *wallWords) {
	const high = 25.0
	n := 0
	for _, name := range wallFigures {
		r := say.rows[name]
		if r == nil {
			continue
		}
		x, y := edgeMM+float64(n%2)*k.w/2, k.y+float64(n/2)*high
		k.text(x, y+6, 11, "", r.Label)
		k.text(x+34, y+6, 10, "", r.Value.Band())
		wide := k.text(x, y+21, 46, "B", r.Value.Number)
		k.text(x+wide+2, y+21, 18, "", r.Value.Unit)
		if name == "travel" {
			k.text(x+34, y+10.5, 10, "", r.Long)
		}
		n++
	}
	k.y += math.Ceil(float64(n)/2) * high
	k.rule()
}

// wallResults are shown beside the map.
var wallResults = [...]string{"current", "net_heat", "bead_width", "wetting_angle", "base_peak_temperature", "throat",
	"zinc_boiled_halfwidth", "margin"}

// middle prints the map with the other results beside it.
func (k *ink) middle(p *Wall, say *wallWords) {
	left, y, low := edgeMM, k.y+5, k.y
	if p.Map != nil {
		left += 92
		low = k.smallMap(p.Map)
	}
	for _, name := range wallResults {
		if r := say.rows[name]; r != nil {
			k.text(left, y, 10, "", r.Label)
			k.text(left+30, y, 10, "B", r.Value.String())
			k.text(left+58, y, 9, "", r.Value.Band())
			y += 5.2
		}
	}
	if verdict := p.Card.Verdict(); verdict != "" {
		k.text(left, y, 10, "B", "verdict: "+verdict)
		y += 5.2
	}
	k.y = max(y, low)
	k.rule()
}

// leastPoints is the smallest size of letters for a caution on a wall.
const leastPoints = 6.5

// signed is the height of the line for the signature above the lower edge.
const signed = edgeMM + 18

// cautions prints the cautions in the largest letters in which all of them fit. It returns those that do not fit in the
// smallest letters, for another page.
func (k *ink) cautions(list []string) (rest []string) {
	room := k.h - signed - k.y
	points := 9.5
	for ; points > leastPoints && k.height(list, points) > room; points -= 0.5 {
	}
	if k.height(list, points) > room {
		room -= lineHigh(points) // for the line that says that there are more
	}
	for len(list) > 0 && k.height(list[:1], points) <= room {
		room -= k.height(list[:1], points)
		k.para(points, "", list[0])
		list = list[1:]
	}
	if len(list) > 0 {
		k.para(points, "B", fmt.Sprintf("More cautions on the next pages (%d): hang every page.", len(list)))
	}
	return list
}

// more prints further pages with the cautions that did not fit on the first.
func (k *ink) more(p *Wall, list []string) {
	const points = 11
	if plain.Width(p.Note) > noteCells {
		list = append(slices.Clone(list), "NOTE  "+p.Note)
	}
	for i := range list {
		if i == 0 || k.y+k.height(list[i:i+1], points) > k.h-edgeMM-10 {
			k.f.AddPage()
			k.y = edgeMM
			k.para(18, "B", p.Name+": continued")
			k.rule()
			k.text(edgeMM, k.h-edgeMM, 8, "", fmt.Sprintf("%s, page %d", p.Foot, k.f.PageNo()))
		}
		k.para(points, "", list[i])
		k.y += 2
	}
}

func (k *ink) signature(p *Wall) {
	k.y = k.h - signed
	k.rule()
	const line = "Test bead peeled and found good by ______________________   date ______________   booth __________"
	k.text(edgeMM, k.y+7, 10, "", line)
	k.text(edgeMM, k.y+13, 8, "", p.Foot)
	k.text(edgeMM, k.y+16.5, 8, "", "Local codes and licensed practice come before this page. Structural, lifting, "+
		"pressure and vehicle work: a qualified procedure and person.")
}
