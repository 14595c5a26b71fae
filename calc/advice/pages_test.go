package advice

import (
	"context"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// The trade's first choice is first in the list, and fillers that must not be used are ruled out.
func TestFillersAreTheTrades(t *testing.T) {
	if testing.Short() {
		t.Skip("every filler for many jobs")
	}
	for _, x := range deep.Of(t, []struct {
		job   calc.Job
		first string
		out   []string
	}{
		{calc.Job{Metal: "galvanized", Gauge: 18}, "cusi3", nil},
		{calc.Job{Metal: "mild-steel", Gauge: 18}, "cusi3", nil},
		{calc.Job{Metal: "stainless-304", Gauge: 18}, "cual8", nil},
		{calc.Job{Metal: "aluminized", Gauge: 18}, "cual8", nil},
		{calc.Job{Metal: "dp800", Gauge: 18}, "cual10fe", []string{"cusn1"}},
		{calc.Job{Metal: "grey-iron", Thickness: calc.Some(8), Joint: "butt"}, "cual10fe", nil},
		{calc.Job{Metal: "copper", Thickness: calc.Some(1)}, "cusn1", nil},
		{calc.Job{Metal: "brass", Thickness: calc.Some(1)}, "", []string{"cusi3", "cual8", "cual10fe", "cusn6",
			"cusn1", "cumn13al8", "cual9ni5"}},
		{calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Use: "wear"}, "cual8", nil},
	}, 1) {
		p := pageOf(t, waited(t, Fillers), x.job)
		if x.first != "" && p.Ranking[0].ID != x.first {
			t.Errorf("%s %s: %s comes first with %.2f, %s second with %.2f", x.job.Metal, x.job.Use, p.Ranking[0].ID,
				p.Ranking[0].Score, p.Ranking[1].ID, p.Ranking[1].Score)
		}
		for _, id := range x.out {
			for _, r := range p.Ranking {
				if r.ID == id && (!r.RuledOut || len(r.Against) == 0) {
					t.Errorf("%s on %s is not ruled out: %+v", id, x.job.Metal, r)
				}
			}
		}
		if len(p.Ranking) != len(tables.Fillers)-1 {
			t.Errorf("%d fillers ranked", len(p.Ranking))
		}
		for i, r := range p.Ranking {
			sum := 0.0
			for _, w := range r.For {
				sum += w.Weight
			}
			for _, w := range r.Against {
				sum -= w.Weight
			}
			if math.Abs(sum-r.Score) > 1e-9 || r.Colour == "" || i > 0 && r.RuledOut == p.Ranking[i-1].RuledOut &&
				r.CannotWet == p.Ranking[i-1].CannotWet &&
				r.Score > p.Ranking[i-1].Score {
				t.Errorf("%s: score %g of reasons worth %g", r.ID, r.Score, sum)
			}
		}
	}
}

// The filler that is assumed if none is chosen is the first of the ranking.
func TestTheAssumedFillerRanksFirst(t *testing.T) {
	if testing.Short() {
		t.Skip("every filler for many jobs")
	}
	for _, m := range deep.Of(t, tables.Metals, 1) {
		if m.Family == tables.BrassFam || m.ID == "silicon-bronze" || m.ID == "aluminium-bronze" {
			continue
		}
		p := pageOf(t, waited(t, Fillers), calc.Job{Metal: m.ID, Thickness: calc.Some(1.5)})
		if p.Ranking[0].ID != p.Card.Used.Filler {
			t.Errorf("%s: the card takes %s, the list begins with %s", m.ID, p.Card.Used.Filler, p.Ranking[0].ID)
		}
	}
}

// Heat shares add up to 100 % and follow thickness and effusivity.
func TestHeatShares(t *testing.T) {
	deep.Turn(t)
	p := pageOf(t, waited(t, Fillers), calc.Job{Metal: "mild-steel", Thickness: calc.Some(1), Thickness2: calc.Some(3),
		Joint: "butt", Feed: calc.Some(5), Travel: calc.Some(8)})
	a, b := value(t, p, "heat_share_1").Value, value(t, p, "heat_share_2").Value
	if math.Abs(a-25) > 1e-9 || math.Abs(a+b-100) > 1e-9 { // one to three, by thickness alone
		t.Errorf("1 and 3 mm of one steel share %g to %g", a, b)
	}
	p = pageOf(t, waited(t, Fillers), calc.Job{Metal: "mild-steel", Thickness: calc.Some(2), Metal2: "copper",
		Thickness2: calc.Some(2), Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(8)})
	f := value(t, p, "heat_share_2")
	if f.Value < 80 || !(f.Low < f.Value && f.Value < f.High) {
		t.Errorf("copper under steel takes %+v", f)
	}
}

func TestPrepare(t *testing.T) {
	text := func(p *Page) string {
		var b strings.Builder
		for _, r := range p.Reasons {
			b.WriteString(r.Text + "\n")
		}
		for _, w := range p.Warnings {
			b.WriteString(w.Code + "\n")
		}
		return b.String()
	}
	iron := pageOf(t, Prepare, calc.Job{Metal: "grey-iron", Thickness: calc.Some(3), Joint: "butt",
		Feed: calc.Some(6), Travel: calc.Some(4), Preheat: calc.Some(20)})
	if all := text(iron); !strings.Contains(all, "iron-peak") || !strings.Contains(all, "graphite") ||
		!strings.Contains(all, "iron-cold") {
		t.Errorf("hot cast iron: %s", all)
	}
	// without a preheat, a casting is assumed to be warmed
	warm := pageOf(t, Prepare, calc.Job{Metal: "grey-iron", Thickness: calc.Some(3), Joint: "butt",
		Feed: calc.Some(6), Travel: calc.Some(4)})
	// 150 to 200 °F, common practice, no source
	if v := value(t, warm, "preheat"); v.Low != 66 || v.High != 93 {
		t.Errorf("preheat %+v", v)
	}
	if strings.Contains(text(warm), "iron-cold") {
		t.Error("a warmed casting is called cold")
	}
	lap := pageOf(t, Prepare, calc.Job{Metal: "galvanized", Gauge: 18, Coating: "G90", Length: calc.Some(600),
		Feed: calc.Some(5), Travel: calc.Some(8)})
	// two coats of 137.3 g/m2 at 7.14 g/cm3
	if v := value(t, lap, "vent_gap").Value; math.Abs(v-2*137.3/7.14e3) > 2e-4 {
		t.Errorf("vent gap %g mm", v)
	}
	if v := value(t, lap, "tacks").Value; v != 16 { // 600 mm, one each 40 mm and one at the end
		t.Errorf("%g tacks", v)
	}
	if got := strings.Join(lap.Order, " "); got != "5 1 6 2 7 3 8 4" {
		t.Errorf("order %s", got)
	}
	mixed := pageOf(t, Prepare, calc.Job{Metal: "stainless-304", Gauge: 18, Metal2: "galvanized", Gauge2: 18,
		Feed: calc.Some(5), Travel: calc.Some(8)})
	if _, ok := mixed.Figure("zinc_strip"); !ok || !strings.Contains(text(mixed), "25 mm back") {
		t.Error("zinc beside stainless is not stripped")
	}
	for _, metal := range []string{"silicon-bronze", "aluminium-bronze"} {
		p := pageOf(t, Prepare, calc.Job{Metal: metal, Thickness: calc.Some(2), Feed: calc.Some(5),
			Travel: calc.Some(8)})
		if want := map[string]float64{"silicon-bronze": 65, "aluminium-bronze": 150}[metal]; value(t, p,
			"interpass").Value != want {
			t.Errorf("%s: interpass %g", metal, value(t, p, "interpass").Value)
		}
	}
}

// Every piece of a skipped seam is laid once, and in a long seam no two neighbours in succession.
func TestSkipOrder(t *testing.T) {
	for n := 1; n <= 24; n++ {
		order := SkipOrder(n)
		seen := map[string]bool{}
		for _, turn := range order {
			seen[turn] = true
		}
		if len(seen) != n {
			t.Errorf("%d pieces: %v", n, order)
		}
		at := make(map[string]int, n)
		for i, turn := range order {
			at[turn] = i
		}
		for k := 1; n >= 4 && k < n; k++ {
			if d := at[strconv.Itoa(k)] - at[strconv.Itoa(k+1)]; d == 1 || d == -1 {
				t.Errorf("%d pieces: %d and %d lie side by side: %v", n, k, k+1, order)
			}
		}
	}
}

// A layer leaves a shaft hot, so that a wait follows: more heat makes it hotter, a thicker shaft cooler. A
// workpiece that starts too warm has no wait, one that would melt has no figures.
func TestInterpassHold(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Filler: "cual8",
		Feed: calc.Some(7), Travel: calc.Some(6), ShaftDia: calc.Some(40), Length: calc.Some(30), Layer: calc.Some(2)}
	p := pageOf(t, Overlay, job)
	hold, after := value(t, p, "interpass_hold"), value(t, p, "layer_temperature")
	if !(hold.Value > 60) || !(after.Value > 150) {
		t.Errorf("a 40 mm shaft after a layer: %g °C, hold %g s", after.Value, hold.Value)
	}
	thick := job
	thick.ShaftDia = calc.Some(120)
	q := pageOf(t, Overlay, thick)
	perLength := value(t, q, "layer_temperature").Value
	if !(perLength < after.Value) {
		t.Errorf("a thicker shaft gets hotter: %g °C", perLength)
	}
	more := job
	more.Travel = calc.Some(4)
	if v := value(t, pageOf(t, Overlay, more), "layer_temperature").Value; !(v > after.Value) {
		t.Errorf("slower leaves %g °C, quicker %g", v, after.Value)
	}
	thin := job
	thin.ShaftDia, thin.Length = calc.Some(6), calc.Some(60)
	q = pageOf(t, Overlay, thin)
	if _, ok := q.Figure("layer_temperature"); ok || len(q.Warnings) == 0 || q.Warnings[0].Code != "part-melts" {
		t.Errorf("a 6 mm shaft: %+v", q.Warnings)
	}
	warm := job
	warm.Preheat = calc.Some(200)
	if _, ok := pageOf(t, Overlay, warm).Figure("interpass_hold"); ok {
		t.Error("a part that starts hotter than the limit has a hold")
	}
	soft := job
	soft.Filler = "cusi3"
	if v := value(t, pageOf(t, Overlay, soft), "interpass").Value; v != 65 {
		t.Errorf("silicon bronze over silicon bronze: %g °C", v)
	}
}

func TestPageNames(t *testing.T) {
	if names, err := PageNames("all"); err != nil || names != nil {
		t.Errorf("%v, %v", names, err)
	}
	if names, err := PageNames("Cost, fit"); err != nil || len(names) != 2 {
		t.Errorf("%v, %v", names, err)
	}
	var fe *mistake.Error
	for _, text := range []string{"", "lunch", "correct", ","} {
		if _, err := PageNames(text); !errors.As(err, &fe) || fe.Hint == "" {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// The pages of a card are those that suit the joint, in the order of the work.
func TestPagesOfAJoint(t *testing.T) {
	for joint, want := range map[string]string{"lap": "fit filler prepare passes machine strength distortion haz " +
		"air cost",
		"overlay": "fit filler prepare overlay machine distortion haz air cost",
		"plug":    "fit filler prepare plug machine strength distortion haz air cost"} {
		c := card(t, calc.Job{Metal: "galvanized", Gauge: 16, Joint: joint, Feed: calc.Some(5), Travel: calc.Some(8)})
		list, err := Pages(context.Background(), c, nil)
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, p := range list {
			names = append(names, p.Name)
		}
		if got := strings.Join(names, " "); got != want {
			t.Errorf("%s: %s", joint, got)
		}
	}
}
