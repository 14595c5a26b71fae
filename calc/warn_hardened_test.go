package calc

import (
	"regexp"
	"strconv"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// hardenedJobs are hardened sheets alone and with another metal as the first or second member, thin and thick.
func hardenedJobs() (list []Job) {
	for _, metal := range []string{"dp600", "dp800", "dp1000", "boron-steel"} {
		for _, other := range []string{"", "copper", "mild-steel", "grey-iron", "stainless-304"} {
			for _, joint := range []string{"lap", "butt", "tee", "plug"} {
				for _, mm := range []float64{0.8, 1.5, 3, 8, 25} {
					j := Job{Metal: metal, Metal2: other, Joint: joint, Thickness: Some(mm)}
					if list = append(list, j); other != "" {
						j.Metal, j.Metal2 = other, metal
						list = append(list, j)
					}
				}
			}
		}
	}
	return list
}

var (
	warmTo      = regexp.MustCompile(`(?:warmed|preheat|Preheat) (?:of |to )(?:no more than )?(\d+) °C`)
	warmsFirst  = Job{Metal: "mild-steel", Metal2: "copper", Filler: "cual10fe", Thickness: Some(1.5)}
	warmerParts = func(text string) (hottest float64) {
		for _, found := range warmTo.FindAllStringSubmatch(text, -1) {
			v, _ := strconv.ParseFloat(found[1], 64)
			hottest = max(hottest, v)
		}
		return hottest
	}
)

// No card of hardened sheet names or tries a preheat above what the sheet bears; bare mild steel needs more.
func TestNothingSoftensHardenedSheet(t *testing.T) {
	const bears = 200 // C, common practice: such steel softens from about 200 to 250 °C
	jobs := append([]Job{{Metal: "dp1000", Metal2: "copper", Thickness: Some(1.5)}}, deep.Of(t, hardenedJobs(), 10)...)
	for _, j := range jobs {
		c := card(t, j)
		if f, ok := c.Figure("least_preheat"); ok && f.Value > bears {
			t.Errorf("%s: %+v", j.short(), f)
		}
		for _, w := range c.Warnings {
			if warmerParts(w.Text) > bears {
				t.Errorf("%s: %s: %s", j.short(), w.Code, w.Text)
			}
		}
		for _, x := range candidates(&j, c) {
			to := j
			if x.alter(&to); to.Preheat.V > bears || warmerParts(x.change) > bears {
				t.Errorf("%s tries %q", j.short(), x.change)
			}
		}
	}
	c := card(t, warmsFirst)
	if f, ok := c.Figure("least_preheat"); !ok || f.Value <= bears {
		for _, w := range c.Warnings {
			if warmerParts(w.Text) > bears {
				return
			}
		}
		t.Error("copper on mild steel needs no more either: the test proves nothing")
	}
}

// A preheat that softens the sheet is cautioned at every temperature over what it bears, and only there.
func TestPreheatThatSoftensIsCautioned(t *testing.T) {
	for _, j := range hardenedJobs() {
		for _, at := range []float64{20, 150, 200, 201, 250, 400, 700} {
			j.Preheat = Some(at)
			c := Card{}
			if err := resolve(j, &c); err != nil {
				t.Fatal(err)
			}
			w := warnings{card: &c}
			w.softens()
			if (len(w.list) == 1) != (at > 200) {
				t.Errorf("%s at %g °C: %+v", j.short(), at, w.list)
			}
		}
	}
	if tables.HardenedWarmest.V != 200 {
		t.Error("the scan's limit is not the program's")
	}
}
