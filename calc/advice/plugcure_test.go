package advice

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

var (
	plugProud   = regexp.MustCompile(`stands ([\d.]+) mm proud, ([\d.]+) s`)
	plugAdvised = regexp.MustCompile(`(hole|wire feed|sheet below), ([\d.]+)`)
)

// What a plug's caution says to change is tried on the page itself: it wets the rim and leaves the middle solid; what
// is only nearest makes the rim hotter.
func TestPlugsAdviceHolds(t *testing.T) {
	var jobs []calc.Job
	for _, metal := range []string{"mild-steel", "stainless-304", "galvanized", "copper", "dp800"} {
		for _, mm := range []float64{0.6, 0.8, 1, 1.5, 2, 3} {
			for _, hole := range []float64{0, 4, 9, 11} {
				for _, feed := range []float64{3, 6, 9} {
					j := calc.Job{Metal: metal, Joint: "plug", Thickness: calc.Some(mm), Feed: calc.Some(feed)}
					if hole > 0 {
						j.Hole = calc.Some(hole)
					}
					jobs = append(jobs, j)
				}
			}
		}
	}
	cured, hotter, proud := 0, 0, 0
	for _, j := range deep.Of(t, jobs, 20) {
		p := pageOf(t, Plug, j)
		for _, w := range p.Warnings {
			cure, nearest := strings.Contains(w.Text, "computed to wet"), strings.Contains(w.Text, "nearest comes")
			if !strings.HasPrefix(w.Code, "plug-") {
				continue
			}
			if cure {
				cured++
			}
			if nearest {
				hotter++
			}
			if found := plugProud.FindStringSubmatch(w.Text); found != nil {
				proud++
				crown, _ := strconv.ParseFloat(found[1], 64)
				crownHolds(t, p, crown, cure && strings.Index(w.Text, "proud") < strings.Index(w.Text+"nearest", "nearest"))
			}
			for _, found := range plugAdvised.FindAllStringSubmatch(w.Text, -1) {
				to, _ := strconv.ParseFloat(found[2], 64)
				holds(t, j, p, found[1], to, cure, nearest)
			}
		}
	}
	if cured+hotter == 0 || proud == 0 {
		t.Errorf("cured %d, hotter %d, by a crown %d: the test proves nothing", cured, hotter, proud)
	}
}

// crownHolds fills the hole on: all metal and time in proportion.
func crownHolds(t *testing.T, p *Page, crown float64, cure bool) {
	t.Helper()
	flush, ok := plugTried(&p.Card, 0)
	high, also := plugTried(&p.Card, crown)
	if !ok || !also {
		t.Fatalf("a plug %g mm proud is not judged", crown)
	}
	if whole := high.Seconds / flush.Seconds * flush.Upper; math.Abs(whole-flush.Upper-crown) > 1e-9 {
		t.Errorf("%g mm proud takes %g s, flush %g s", crown, high.Seconds, flush.Seconds)
	}
	toe, melts := p.Card.Setup.Filler.Toe.V, p.Card.Setup.Members[1].Metal.Solidus.V
	if high.middle() > melts || cure && high.rim() < toe || !cure && high.rim() <= flush.rim() {
		t.Errorf("%g mm proud: rim %.0f °C after %.0f of %.0f, middle %.0f of %.0f °C", crown, high.rim(), flush.rim(), toe,
			high.middle(), melts)
	}
}

func holds(t *testing.T, j calc.Job, was *Page, what string, to float64, cure, nearest bool) {
	t.Helper()
	switch what {
	case "hole":
		j.Hole = calc.Some(to)
	case "wire feed":
		j.Feed = calc.Some(to)
	default:
		j.Thickness2 = calc.Some(to)
	}
	p := pageOf(t, Plug, j)
	rim, middle := value(t, p, "plug_rim_temperature"), value(t, p, "plug_middle_temperature")
	const rounded = 5 // K, by the feed's last digit that is said
	if solid := p.Card.Setup.Members[1].Metal.Solidus.V; middle.Value > solid+rounded {
		t.Errorf("%s %g mm, %s %g: the middle melts at %.0f °C", j.Metal, j.Thickness.V, what, to, middle.Value)
	}
	if cure && rim.Value < p.Card.Setup.Filler.Toe.V-rounded {
		t.Errorf("%s %g mm, %s %g: the rim has %.0f °C", j.Metal, j.Thickness.V, what, to, rim.Value)
	}
	if before := value(t, was, "plug_rim_temperature"); nearest && rim.Value <= before.Value {
		t.Errorf("%s %g mm, %s %g: the rim falls from %.0f to %.0f °C", j.Metal, j.Thickness.V, what, to, before.Value,
			rim.Value)
	}
}
