package advice

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

var (
	plugProud   = regexp.MustCompile(`stands ([\d.]+) mm proud`)
	plugAdvised = regexp.MustCompile(`(hole|wire feed|sheet below), ([\d.]+)`)
)

// A change that a plug's caution advises is tried on the page itself: it wets the rim and leaves the middle
// solid; a change that is only the nearest makes the rim hotter, unless the job's middle melts.
func TestPlugAdviceWorks(t *testing.T) {
	deep.Turn(t)
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
	cured, nearer, proud := 0, 0, 0
	for _, j := range deep.Of(t, jobs, 20) {
		p := pageOf(t, Plug, j)
		for _, w := range p.Warnings {
			_, cures, cure := strings.Cut(w.Text, "leave the middle solid: ")
			_, near, nearest := strings.Cut(w.Text, "The nearest is ")
			switch {
			case cure:
				cured++
				cures, _, _ = strings.Cut(cures+". ", ". ")
				for _, one := range strings.Split(cures, "; or ") {
					proud += holds(t, j, p, one, true)
				}
			case nearest:
				nearer++
				proud += holds(t, j, p, near, false)
			}
		}
	}
	if cured == 0 || nearer == 0 && deep.Run() || proud == 0 {
		t.Errorf("cured %d, nearer %d, by a crown %d: the test proves nothing", cured, nearer, proud)
	}
}

// holds tries an advised change; it returns 1 if the change has a crown.
func holds(t *testing.T, j calc.Job, was *Page, advice string, cure bool) (proud int) {
	t.Helper()
	crown := 0.0
	if found := plugProud.FindStringSubmatch(advice); found != nil {
		crown, _ = strconv.ParseFloat(found[1], 64)
		proud = 1
	}
	if found := plugAdvised.FindStringSubmatch(advice); found != nil {
		to, _ := strconv.ParseFloat(found[2], 64)
		switch found[1] {
		case "hole":
			j.Hole = calc.Some(to)
		case "wire feed":
			j.Feed = calc.Some(to)
		default:
			j.Thickness2 = calc.Some(to)
		}
	} else if proud == 0 {
		t.Errorf("%q advises nothing", advice)
	}
	c := card(t, j)
	r, ok := plugTried(c, crown)
	if !ok {
		t.Fatalf("%s %g mm, %s: not judged", j.Metal, j.Thickness.V, advice)
	}
	const rounded = 5 // K, from the rounding of the feed in the text
	toe, solid := c.Setup.Filler.Toe.V, c.Setup.Members[1].Metal.Solidus.V
	if r.middle() > solid+rounded || cure && r.rim() < toe-rounded {
		t.Errorf("%s %g mm, %s: rim %.0f of %.0f °C, middle %.0f of %.0f °C", j.Metal, j.Thickness.V, advice, r.rim(),
			toe, r.middle(), solid)
	}
	melts := value(t, was, "plug_middle_temperature").Value > solid // then its rim's heat is no measure
	if before := value(t, was, "plug_rim_temperature"); !cure && !melts && r.rim() <= before.Value {
		t.Errorf("%s %g mm, %s: the rim falls from %.0f to %.0f °C", j.Metal, j.Thickness.V, advice, before.Value,
			r.rim())
	}
	return proud
}
