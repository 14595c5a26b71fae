package calc

import (
	"math"
	"strings"
	"testing"
	"time"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit"
	"brazebooth/calc/limit/grid"
	"brazebooth/internal/crew"
	"brazebooth/internal/deep"
)

// A drawn full window has the zones of one whose every point is computed, except for a few points at a border, and
// margins near the border within one per cent on average. At least a third of the points are not computed.
func TestDrawnMapIsTheFullMap(t *testing.T) {
	jobs := []Job{{Metal: "galvanized", Gauge: 18}, {Metal: "mild-steel", Gauge: 18, Joint: "butt"},
		{Metal: "galvanized", Gauge: 18, Gauge2: 14, Joint: "lap"}, {Metal: "mild-steel", Thickness: Some(6),
			Joint: "butt"},
		{Metal: "copper", Thickness: Some(2), Joint: "lap"}, {Metal: "mild-steel", Gauge: 18, Joint: "butt",
			Gap: Some(0.8)},
		{Metal: "galvanized", Gauge: 20, Joint: "tee", Position: "overhead", ZincLimit: Some(4)}}
	if testing.Short() {
		jobs = jobs[:1]
	}
	for _, job := range deep.Of(t, jobs, 1) {
		var card Card
		if err := resolve(job, &card); err != nil {
			t.Fatal(err)
		}
		b := newBoard(&card)
		b.effort = effort.New(t.Context())
		drawn, full := b.draws(&card, FullWindow), b.draws(&card, FullWindow)
		var rows crew.Crew
		for i := range full.Feeds.N {
			rows.Go(func() {
				for j := range full.Travels.N {
					full.Put(i, j, full.field.beside(full.Feeds.At(float64(i)), full.Travels.At(float64(j))))
				}
			})
		}
		rows.Wait()
		computed := 0
		for ; ; drawn.Halve() {
			computed += drawn.Wanted()
			if err := drawn.sweep(untold); err != nil {
				t.Fatal(err)
			}
			if drawn.Step == 1 {
				break
			}
		}
		other := 0
		for k := range full.Points {
			a, b := &drawn.Points[k], &full.Points[k]
			if a.Zone() == b.Zone() {
				continue
			}
			other++
			if least := min(math.Abs(b[limit.Wets]), math.Abs(b[limit.Solid]), math.Abs(b[limit.Burn])); least > 0.03 {
				t.Errorf("%+v: point %d is %s, computed %s, %.3f from the border", job, k, a.Zone(), b.Zone(), least)
			}
		}
		off := marginsOff(&drawn.Limits, &full.Limits)
		t.Logf("%s %s: %d of %d computed, %d zones differ, margins %.2f off", job.Metal, job.Joint, computed,
			len(full.Points), other, off)
		if off > 1 {
			t.Errorf("%+v: margins near the border are off by %.2f on average", job, off)
		}
		if other > 3 || computed > 2*len(full.Points)/3 {
			t.Errorf("%+v: %d zones differ, %d points computed", job, other, computed)
		}
	}
}

// marginsOff is by how much a drawn map's margins of less than 15 % are off on average, in points of per cent.
func marginsOff(drawn, full *grid.Limits) float64 {
	var d, f Window
	d.describe(drawn)
	f.describe(full)
	sum, near := 0.0, 0
	for k, margin := range f.Margins {
		if math.Abs(margin) < 15 {
			sum += math.Abs(d.Margins[k] - margin)
			near++
		}
	}
	if near < 20 {
		return 0 // none to speak of
	}
	return sum / float64(near)
}

// A caller's progress that panics ends the drawing with that panic, also where other rows wait to tell theirs.
func TestProgressThatPanicsEndsTheDrawing(t *testing.T) {
	var card Card
	if err := resolve(Job{Metal: "mild-steel", Gauge: 18}, &card); err != nil {
		t.Fatal(err)
	}
	for at := range 3 { // of the rows that are told
		b := newBoard(&card)
		b.effort = effort.New(t.Context())
		drawing, told := b.draws(&card, CoarseWindow), 0
		ended := make(chan any)
		go func() {
			defer func() { ended <- recover() }()
			_ = drawing.sweep(func(float64) {
				if told++; told > at {
					panic("no screen")
				}
			})
		}()
		select {
		case fault := <-ended:
			if err, ok := fault.(error); !ok || !strings.HasPrefix(err.Error(), "no screen") {
				t.Errorf("row %d: the drawing ended with %v", at, fault)
			}
		case <-time.After(deep.Patience(t)):
			t.Fatalf("row %d: the drawing hangs", at)
		}
	}
}
