package canvas

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// The meaning of a span is written as long as there is room for it. The span itself is never cut. If there is room only
// for "yours", the span is left out, because the bar shows it.
func TestSpanWords(t *testing.T) {
	th := themesToTry()["none"]
	for _, x := range []struct {
		kind  SpanKind
		yours bool
		want  [3]string // at 30, 16 and 9 columns
	}{
		{GoodSpan, false, [3]string{"good 3.12–4.77", "good 3.12–4.77", "3.12–4.77"}},
		{GoodSpan, true, [3]string{"good 3.12–4.77 · yours", "good 3.12–4.77", "yours"}},
		{LikelySpan, false, [3]string{"3.12–4.77 likely", "3.12–4.77 likely", "3.12–4.77"}},
		{LikelySpan, true, [3]string{"3.12–4.77 likely · yours", "yours", "yours"}},
		{NoSpan, true, [3]string{"3.12–4.77 · yours", "yours", "yours"}},
	} {
		for i, w := range []int{30, 16, 9} {
			d := tryDials[0]
			d.Bar.Kind, d.Yours = x.kind, x.yours
			lines := strings.Split(seenBlock(t, "dial", d.Draw(th, w, 6), w, 6), "\n")
			if got := lines[len(lines)-1]; got != x.want[i] {
				t.Errorf("%v, yours %t, %d columns: %q, want %q", x.kind, x.yours, w, got, x.want[i])
			}
		}
	}
	for v, sign := range map[float64]string{3: "→", 4: "✓", 5: "→"} {
		want := sign + " 3.12–4.77 · yours"
		d := tryDials[0]
		d.Bar.Value, d.Yours = v, true
		if got := seenBlock(t, "dial", d.Draw(th, 20, 6), 20, 6); !strings.Contains(got, want) {
			t.Errorf("%g: %q is not in\n%s", v, want, got)
		}
	}
	d := tryDials[0]
	d.Bar.Kind, d.Span = NoSpan, ""
	if got := seenBlock(t, "dial", d.Draw(th, 30, 6), 30, 6); strings.Contains(got, "good") {
		t.Errorf("no span is known, but the dial says:\n%s", got)
	}
}

// A third part in a cell gets the colour of the dot beside it, otherwise a dot of the part below would be alone between
// two others.
func TestThirdPartOfACell(t *testing.T) {
	th := themesToTry()["full"]
	c := NewCells(1, 1)
	c.colours(0, 0, [4]part{partBoiled, partBead, partSecond, partSecond})
	want := th.Paint(partBoiled.role().On(partSecond.role()), "▀")
	if got := c.Lines(th)[0].Text; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A stopped job has grey dials. A value within its good span has the span's colour, a value outside it the terminal's
// own colour, whatever the verdict is.
func TestDialColours(t *testing.T) {
	th := themesToTry()["full"]
	good, hot := th.style(Good.Ink()).String(), th.style(Hot.Ink()).String()
	beyond := tryDials[2]
	text := beyond.Draw(th, 30, 7).String()
	if !strings.Contains(text, "▄"+ansi.ResetStyle+"_█_") || strings.Contains(text, hot) {
		t.Errorf("a value beyond its good span: %q", text)
	}
	beyond.Bar.Value = 8
	if text = beyond.Draw(th, 30, 7).String(); !strings.Contains(text, good+"▄▄▄▄▄▄▄▄▄█▄▄▄"+ansi.ResetStyle) {
		t.Errorf("a value in its good span: %q", text)
	}
	beyond.Bar.Off, beyond.Bar.Value = true, 10.4
	text = beyond.Draw(th, 30, 7).String()
	if strings.Contains(text, good) || strings.Contains(text, hot) {
		t.Errorf("a dial of a stopped job is coloured: %q", text)
	}
	if bar := th.style(Quiet.Ink()).String() + "____"; !strings.Contains(text, bar) {
		t.Errorf("the bar of a stopped job is not grey from its beginning: %q", text)
	}
	beyond.Bar.Off, beyond.Lit = false, true
	if text = beyond.Draw(th, 30, 7).String(); !strings.Contains(text, hot) {
		t.Errorf("lit digits: %q", text)
	}
	likely, grey := tryDials[1], th.style(Quiet.Ink()).String()+"___"
	for h, under := range map[int]bool{6: true, 7: false} {
		if text = likely.Draw(th, 30, h).String(); strings.Contains(text, grey) != under {
			t.Errorf("a bar right under its digits is grey, one with room between is not: %d lines, %q", h, text)
		}
	}
}

// The bar of a beat is lit up to the present position, and says whether the arc burns.
func TestBeat(t *testing.T) {
	th := themesToTry()["none"]
	for _, x := range []struct {
		at    float64
		burns bool
		want  string // █ is a lit cell
	}{
		{0, true, "......................."},
		{0.25, true, "█████.................."},
		{0.5, false, "█████████.█............"},
		{1, false, "█████████.█████████████"},
	} {
		b := Beat{On: 0.4, Off: 0.6, Playing: true, At: x.at}
		if b.Burns() != x.burns {
			t.Errorf("at %g the arc burns: %t", x.at, b.Burns())
		}
		var got strings.Builder
		c := NewCells(23, 1)
		b.fill(c, th)
		for i := range c.list {
			if c.list[i].ink == Own.On(Swap) {
				got.WriteString("█")
			} else {
				got.WriteString(".")
			}
		}
		if got.String() != x.want {
			t.Errorf("at %g: %s, want %s", x.at, got.String(), x.want)
		}
	}
	if (Beat{On: 1, Off: 1, At: 0.1}).Burns() {
		t.Error("a beat that is not played burns")
	}
}

func TestShare(t *testing.T) {
	th := themesToTry()["none"]
	full := strings.Repeat("▄", 10)
	want := map[float64]string{-1: "", 0: "", 0.01: "▖", 0.5: full[:15], 0.53: full[:15] + "▖", 1: full, 7: full}
	for share, want := range want {
		if got := seenBlock(t, "share", Block{Share(th, Plain, 10, share)}, 10, 1); got != want {
			t.Errorf("%g is %q, want %q", share, got, want)
		}
	}
}
