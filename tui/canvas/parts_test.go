package canvas

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/internal/joint"
	"brazebooth/tables"
)

// In every size no two digits look the same, all have the same width, and 0 and 8 are symmetric.
func TestFiguresDiffer(t *testing.T) {
	for _, coarse := range []bool{false, true} {
		for _, s := range []Size{SizeM, SizeL, {Lines: 4, Columns: 4}, {Lines: 4, Columns: 5}, {Lines: 5, Columns: 7},
			{Lines: 8, Columns: 11}, {Lines: 12, Columns: 17}} {
			looks := map[string]rune{}
			for _, r := range "0123456789" {
				d := s.shape(r, coarse)
				look := fmt.Sprint(d.list)
				if other, ok := looks[look]; ok {
					t.Errorf("%v: %c and %c look the same", s, r, other)
				}
				looks[look] = r
				if d.w != 2*s.Columns || len(d.list) != d.w*2*s.Lines {
					t.Errorf("%v: %c has %d dots in rows of %d", s, r, len(d.list), d.w)
				}
				for y := range 2 * s.Lines {
					row := slices.Clone(d.list[y*d.w : (y+1)*d.w])
					slices.Reverse(row)
					if (r == '0' || r == '8') && !slices.Equal(row, d.list[y*d.w:(y+1)*d.w]) {
						t.Errorf("%v, coarse %t: %c is not even in row %d", s, coarse, r, y)
					}
				}
			}
		}
	}
}

// Letters of similar shape differ in every size.
func TestLettersDiffer(t *testing.T) {
	for _, s := range []Size{SizeM, SizeL, {Lines: 4, Columns: 5}, {Lines: 10, Columns: 13}} {
		looks := map[string]rune{}
		for r := 'A'; r <= 'Z'; r++ {
			look := fmt.Sprint(s.shape(r, false).list)
			if other, ok := looks[look]; ok {
				t.Errorf("%v: %c and %c look the same", s, r, other)
			}
			looks[look] = r
		}
	}
}

// The size of a dial depends on the terminal and on the widest number, not on the present number.
func TestDigitsKeepTheirSize(t *testing.T) {
	th := themesToTry()["none"]
	lines := func(number string) (filled []int) {
		d := tryDials[0]
		d.Number = number
		for i, l := range strings.Split(seenBlock(t, number, d.Draw(th, 30, 9), 30, 9), "\n") {
			if strings.TrimSpace(l) != "" {
				filled = append(filled, i)
			}
		}
		return filled
	}
	if a, b := lines("3.86"), lines("1.1"); !slices.Equal(a, b) {
		t.Errorf("3.86 stands on lines %v, 1.1 on %v", a, b)
	}
	if a := tryDials[0].size(30, 9); a.Lines < 4 {
		t.Errorf("in 30 columns and 9 lines the digits are %v", a)
	}
}

// Big digits are drawn in their column, and a figure that cannot be drawn big is written in full.
func TestDialsShowTheirFigures(t *testing.T) {
	deep.Turn(t)
	th := themesToTry()["none"]
	for n := 1; n <= 5; n++ {
		list := append(append(Dials{}, tryDials...), tryDials[:2]...)[:n]
		for w := 32; w <= 220; w++ {
			for h := 1; h <= 16; h++ {
				each := (w+dialGap)/n - dialGap
				text := seenBlock(t, "dials", list.Draw(th, w, h), w, h)
				if size := list.size(each, h, true); size.Lines > 0 {
					if got := size.Width("88.8"); got > each {
						t.Fatalf("%d dials in %dx%d: digits %d wide in %d", n, w, h, got, each)
					}
					continue
				}
				if h < n && each < 12 || h/n >= 3 {
					continue // nothing, or big digits in rows
				}
				for _, d := range list {
					if !strings.Contains(text, d.Number) {
						t.Fatalf("%d dials in %dx%d: %s is not in\n%s", n, w, h, d.Number, text)
					}
				}
			}
		}
	}
}

// A value, its span and the track differ in height. A value beyond the track is an arrow.
func TestBar(t *testing.T) {
	th := themesToTry()["none"]
	for _, x := range []struct {
		bar  Bar
		want string
	}{
		{Bar{Low: 0, High: 10, Value: 5, Span: [2]float64{3, 7}, Kind: GoodSpan}, "___▄▄█▄___"},
		{Bar{Low: 0, High: 10, Value: 1.5, Span: [2]float64{3, 7}, Kind: LikelySpan}, "_█_▄▄▄▄___"},
		{Bar{Low: 0, High: 10, Value: 12}, "_________▸"},
		{Bar{Low: 0, High: 10, Value: -1, Span: [2]float64{-5, 2}, Kind: GoodSpan}, "◂▄________"},
		{Bar{Low: 0, High: 10, Value: 10, Span: [2]float64{20, 30}, Kind: GoodSpan}, "_________█"},
		{Bar{Low: 0, High: 10, Value: 4, Span: [2]float64{4.2, 4.3}, Kind: GoodSpan}, "____█_____"},
		{Bar{Low: 0, High: 10, Value: math.NaN()}, ""},
		{Bar{Low: 3, High: 3, Value: 3}, ""},
	} {
		c := NewCells(10, 1)
		x.bar.draw(c, 0, 0, 10)
		if got := seenBlock(t, "bar", c.Lines(th), 10, 1); got != x.want {
			t.Errorf("%+v is %q, want %q", x.bar, got, x.want)
		}
	}
}

// Every chip can be reached, the chip under the cursor is always visible, and a click finds the chip at its column. The
// last page has no room for one more chip.
func TestChipsScroll(t *testing.T) {
	th := themesToTry()["none"]
	for _, w := range []int{32, 40, 60, 80} {
		for _, h := range []int{1, 3} {
			for i := range tryChips.List {
				l := tryChips
				l.Cursor = i
				line := strings.Split(seenBlock(t, "chips", l.Draw(th, w, h), w, h), "\n")[min(1, h/3)]
				text := l.List[i].text()
				at := strings.Index(line, text)
				if at < 0 {
					t.Fatalf("%d columns: %q is not in %q", w, text, line)
				}
				if got := l.At(width(line[:at]), w, h); got != i {
					t.Errorf("%d columns, %d lines: a click on chip %d finds %d in %q", w, h, i, got, line)
				}
				if page := l.page(w, h >= 3); i+1 == len(l.List) && page[0].i > 0 {
					last := page[len(page)-1]
					if end := last.x + last.wide; end+l.wide(page[0].i-1, h >= 3)+1 <= w {
						t.Errorf("%d columns, %d lines: there is room for chip %d in %q", w, h, page[0].i-1, line)
					}
				}
			}
		}
	}
}

// The reason of a stop is never shortened if there are enough lines for it.
func TestStopIsWhole(t *testing.T) {
	th := themesToTry()["none"]
	s := tryStop
	s.Reason = "Do not arc braze brass sheet: it melts below every bronze filler and boils off zinc."
	s.Status = "your job   metric"
	for w := 40; w <= 200; w++ {
		got := seenBlock(t, "stop", s.Draw(th, w, 4), w, 4)
		for _, word := range strings.Fields(s.Reason + " " + s.Do) {
			if !strings.Contains(got, strings.Trim(word, ".")) {
				t.Fatalf("%d columns: %q is missing in\n%s", w, word, got)
			}
		}
	}
}

func TestTicks(t *testing.T) {
	texts := func(list []tick) string {
		var s []string
		for _, x := range list {
			s = append(s, fmt.Sprintf("%s@%d", x.text, x.at))
		}
		return strings.Join(s, " ")
	}
	room := func(s string) int { return width(s) + 2 }
	for _, x := range []struct{ got, want string }{
		{texts(logTicks(1, 100, 40, false, room)), "1@0 2@6 3@9 5@13 7@16 10@20 20@26 50@33 100@39"},
		{texts(evenTicks(axis{high: 1}, 41, 10, true)), "0,00@0 0,25@10 0,50@20 0,75@30 1,00@40"},
		{texts(evenTicks(axis{low: -200, high: 800}, 11, 3, false)), "0@2 500@7"},
	} {
		if x.got != x.want {
			t.Errorf("%s, want %s", x.got, x.want)
		}
	}
	for _, list := range [][]tick{logTicks(2.3, 13, 45, false, room), logTicks(90, 510, 60, false, room)} {
		for i := 1; i < len(list); i++ {
			if list[i].at-list[i-1].at < (width(list[i].text)+width(list[i-1].text))/2+1 {
				t.Errorf("%v touch", list)
			}
		}
		if len(list) < 4 {
			t.Errorf("only %v", list)
		}
	}
}

// A joint is to scale: the thickness of its sheets has the same scale as the width of the bead.
func TestJointIsToScale(t *testing.T) {
	j := Joint{Section: joint.Section{Shape: joint.Shape{Kind: joint.Overlay, Thick: [2]float64{4, 0},
		Wet: [2]float64{3, 3}, Phi: 0.5}}}
	const w, h = 60, 12
	scale := j.Scale(w, h)
	bead, sheet := 0, 0
	for x := range 2 * w {
		at := (float64(x)-float64(w))*scale/2 + scale/4
		if c := j.Bead(); j.at(c, joint.Point{X: at, Y: scale / 2}, scale) == partBead {
			bead++
		}
	}
	for y := range 200 {
		if c := j.Bead(); j.at(c, joint.Point{Y: -float64(y)*scale/4 - scale/8}, scale) == partFirst {
			sheet++
		}
	}
	if got := float64(bead) * scale / 2; math.Abs(got-6) > scale {
		t.Errorf("the bead is %.2f mm wide, want 6", got)
	}
	if got := float64(sheet) * scale / 4; math.Abs(got-4) > scale/2 {
		t.Errorf("the sheet is %.2f mm thick, want 4", got)
	}
}

// Everything that a test bead may show has a drawing, and no two look the same, with colours or without.
func TestSightsAreDrawn(t *testing.T) {
	for name, th := range themesToTry() {
		looks := map[string]string{}
		for _, sight := range tables.Sights {
			look := DrawSight(th, sight.ID, 18, 4).String()
			if strings.TrimSpace(look) == "" {
				t.Errorf("%s: %s has no drawing", name, sight.ID)
			}
			if other := looks[look]; other != "" {
				t.Errorf("%s: %s looks like %s", name, sight.ID, other)
			}
			looks[look] = sight.ID
		}
		if len(looks) != len(sights) {
			t.Errorf("%s: %d drawings of %d sights", name, len(sights), len(looks))
		}
	}
}

// Without a rule between them, big figures have at least three columns between them.
func TestBigFiguresKeepApart(t *testing.T) {
	for n := 2; n <= 5; n++ {
		list := append(append(Dials{}, tryDials...), tryDials[:2]...)[:n]
		for w := ruledWidth; w <= 220; w++ {
			for h := 1; h <= 16; h++ {
				each := (w+dialGap)/n - dialGap
				size := list.size(each, h, false)
				if got := size.Width("88.8"); size.Lines > 0 && each+dialGap-got < 3 {
					t.Fatalf("%d dials in %dx%d: digits %d wide in %d", n, w, h, got, each)
				}
			}
		}
	}
}
