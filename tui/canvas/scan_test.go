package canvas

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/internal/joint"
)

// sightIDs are the ids of the drawings.
func sightIDs() []string {
	var ids []string
	for id := range sights {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	return ids
}

// wild are parts with texts and numbers that no caller should give them: wide and combining characters, long words, NaN
// and infinities.
func wild() []drawn {
	nan, inf := math.NaN(), math.Inf(1)
	long := "溶接部の隙間 e\u0301toile 👨‍👩‍👧 Donaudampfschifffahrtsgesellschaftskapitän"
	strip := Strip{State: Stop, Reason: long, Do: long, Status: long}
	dial := Dial{Name: long, Unit: "毎分", Number: "–12.345678", Span: long, Also: long, Cursor: true,
		Bar: Bar{Low: 1, High: 0, Value: nan}}
	loud := dial
	loud.Loud, loud.Lit, loud.Number = true, true, "88.8"
	loud.Bar = Bar{Low: 0, High: 1, Value: inf, Span: [2]float64{-inf, nan}, Kind: GoodSpan}
	chips := Chips{Cursor: 9, Hint: long, List: []Chip{{long, long, true}, {"", "", false}, {"溶", "接", true}}}
	beat := Beat{On: 1, Off: 1e8, OnText: long, OffText: long, Note: long, Playing: true, At: nan}
	all := []drawn{
		{"wild strip", 0, strip.Draw}, {"wild dial", 0, dial.Draw}, {"loud", 0, loud.Draw},
		{"wild dials", 0, Dials{dial, loud, dial, dial, dial}.Draw}, {"wild chips", 0, chips.Draw},
		{"wild edges", 0, Edges{{long, nan}, {"a", inf}, {long, -inf}}.Draw},
		{"wild map", 0, wildMap(long).Draw}, {"wild chart", 0, wildChart(long).Draw}, {"wild beat", 0, beat.Draw},
		{"no chips", 0, Chips{}.Draw}, {"no dials", 0, Dials{}.Draw}, {"no edges", 0, Edges{}.Draw},
	}
	tee := Joint{Section: joint.Section{Shape: joint.Shape{Kind: joint.Tee, Thick: [2]float64{1e-9, 1e9},
		Wet: [2]float64{1, 1}, Phi: 3}}}
	return append(all, drawn{"wild joint", 0, tee.Draw})
}

func wildMap(long string) *Map {
	nan, inf := math.NaN(), math.Inf(1)
	m := tryMap()
	m.TextX, m.TextY, m.NameX, m.NameY, m.At = "123456789", "溶接溶接", long, long, [2]float64{nan, inf}
	m.Suggested = [2]float64{-1, nan}
	return m
}

func wildChart(long string) *Chart {
	return &Chart{X: long, Y: long, OnName: long, On: []Stretch{{-5, 1e9}},
		Limits: []Limit{{Name: long}, {Name: long, At: 1e300}},
		Traces: []Trace{{Name: long, X: []float64{0, 1, 2, 3}, Y: []float64{0, 1, 1e300, -1e300}}}}
}

// In every size, no part draws beyond its edges, and each line has the width that it claims.
func TestEverySize(t *testing.T) {
	parts := append(allParts(80), wild()...)
	parts = append(parts, drawn{"legend", 0, func(th *Theme, w, h int) Block {
		b := Legend(th, w)
		return b[:max(0, min(h, len(b)))]
	}})
	for _, id := range deep.Of(t, sightIDs(), 4) {
		parts = append(parts, drawn{id, 0, func(th *Theme, w, h int) Block { return DrawSight(th, id, w, h) }})
	}
	step := 7 // coprime to the number of heights, so that a sample still meets all heights
	if deep.Run() {
		step = 1
	}
	heights := []int{-1, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 14, 20, 33, 60}
	n := 0
	for name, th := range themesToTry() {
		for _, p := range parts {
			for w := n%step - 1; w <= 220; w += step {
				// Each width with another height in turn, because all pairs would take a minute.
				h := heights[n%len(heights)]
				n++
				seenBlock(t, fmt.Sprintf("%s, %s", name, p.name), p.draw(th, w, h), w, h)
			}
		}
	}
}

// From 32 columns on, every part fits into the lines that its screen gives it.
func TestNothingIsMissingFrom32(t *testing.T) {
	th := themesToTry()["full"]
	for w := 32; w <= 220; w++ {
		for _, p := range allParts(w) {
			if len(p.draw(th, w, p.lines)) == 0 {
				t.Fatalf("%s draws nothing at %d columns, %d lines", p.name, w, p.lines)
			}
		}
	}
}

// Below that, a part draws nothing instead of a piece of itself.
func TestWithoutRoomNothingIsDrawn(t *testing.T) {
	th := themesToTry()["full"]
	sight := drawn{"sight", 0, func(th *Theme, w, h int) Block { return DrawSight(th, "good", w, h) }}
	for _, p := range append(allParts(80), sight) {
		for _, size := range [][2]int{{7, 20}, {80, 0}, {0, 0}, {-3, -3}} {
			if b := p.draw(th, size[0], size[1]); len(b) != 0 {
				t.Errorf("%s in %v: %q", p.name, size, b.String())
			}
		}
	}
	if DrawSight(th, "no such id", 40, 8) != nil {
		t.Error("a drawing of nothing")
	}
}
