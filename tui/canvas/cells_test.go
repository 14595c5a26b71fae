package canvas

import (
	"slices"
	"strings"
	"testing"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
)

// A wide character takes its columns, and nothing of it is left when a part of it is overwritten.
func TestWideCharacters(t *testing.T) {
	th := themesToTry()["none"]
	for _, x := range []struct {
		at         int
		text, want string
	}{
		{0, "溶接", "溶接"},
		{1, "x", " x接"},
		{0, "x", "x 接"},
		{3, "x", "溶 x"},
		{9, "溶", "溶接"}, // one column is left for a character of two
		{8, "溶", "溶接    溶"},
		{4, "e\u0301x", "溶接e\u0301x"},
		{4, "a\x07b", "溶接ab"},
	} {
		c := NewCells(10, 1)
		c.Put(0, 0, Plain, "溶接")
		c.Put(x.at, 0, Plain, x.text)
		if got := seenBlock(t, x.text, c.Lines(th), 10, 1); got != x.want {
			t.Errorf("%q at %d gives %q, want %q", x.text, x.at, got, x.want)
		}
	}
}

// A line has one escape sequence for each run of equal ink, and ends without one.
func TestRunsOfInk(t *testing.T) {
	th := themesToTry()["full"]
	c := NewCells(20, 2)
	c.Put(0, 0, Quiet.Ink(), "ab")
	c.Put(2, 0, Quiet.Ink(), "cd")
	c.Put(5, 0, Text.Ink()|Bold, "e")
	c.Fill(0, 1, 3, 1, Good.onGround())
	b := c.Lines(th)
	if want := "\x1b[38;5;248mabcd \x1b[m\x1b[1me\x1b[m"; b[0].Text != want {
		t.Errorf("%q, want %q", b[0].Text, want)
	}
	if want := "\x1b[38;5;16;48;5;79m   \x1b[m"; b[1].Text != want || b[1].Width != 3 {
		t.Errorf("%q, want %q", b[1].Text, want)
	}
}

// Grids come from a pool: a grid must not show the content of an earlier one.
func TestCellsAreEmpty(t *testing.T) {
	th := themesToTry()["none"]
	for _, w := range []int{30, 10, 20, 30} {
		c := NewCells(w, 3)
		c.Fill(0, 0, w, 3, Quiet.On(Swap))
		c.Lines(th)
		if b := NewCells(w, 3).Lines(th); strings.TrimSpace(b.String()) != "" {
			t.Fatalf("%q", b.String())
		}
	}
}

func TestBeside(t *testing.T) {
	b := Block{{"ab", 2}}.beside(4, Block{{"x", 1}, {"", 0}, {"yz", 2}})
	if got := b.String(); got != "ab  x\n\n    yz" || b[2].Width != 6 {
		t.Errorf("%q %v", got, b)
	}
}

func TestWrap(t *testing.T) {
	for _, x := range []struct {
		text string
		room int
		want string
	}{
		{"leave up to 0.1 mm", 8, "leave up|to 0.1|mm"},
		{"leave up to", 20, "leave up to"},
		{"abcdefghij kl", 4, "abcd|efgh|ij|kl"},
		{"溶接部 x", 4, "溶接|部 x"},
		{"溶", 1, ""},
		{"x", 0, ""},
		{"", 9, ""},
	} {
		if got := strings.Join(Wrap(x.text, x.room), "|"); got != x.want {
			t.Errorf("%q in %d: %q, want %q", x.text, x.room, got, x.want)
		}
	}
}

// Terminals of the same kind have equal themes. Without colours only bold and reverse are sent.
func TestThemes(t *testing.T) {
	a := ThemeOf(ThemeAuto, true, colorprofile.TrueColor, false)
	if *a != *ThemeOf(ThemeDark, true, colorprofile.ANSI256, false) {
		t.Error("the same palette in as many colours is another theme")
	}
	light := ThemeOf(ThemeAuto, false, colorprofile.TrueColor, false)
	if *a == *light || *a == *ThemeOf(ThemeContrast, true, colorprofile.TrueColor, false) {
		t.Error("two palettes are one theme")
	}
	none := ThemeOf(ThemeNone, true, colorprofile.TrueColor, false)
	for _, th := range []*Theme{none, ThemeOf(ThemeAuto, false, colorprofile.ASCII, false)} {
		for _, p := range allParts(80) {
			text := p.draw(th, 80, p.lines).String()
			for _, sent := range strings.Split(text, "\x1b[")[1:] {
				parameters, _, _ := strings.Cut(sent, "m")
				if !slices.Contains([]string{"", "1", "7", "1;7"}, parameters) {
					t.Fatalf("%s sends %q without colours", p.name, parameters)
				}
			}
		}
	}
	style := lipgloss.NewStyle().Bold(true).Foreground(lipgloss.Color(tones[Good.role()][onDark].indexed))
	if got := a.Paint(Good.Ink()|Bold, "ok"); got != style.Render("ok") {
		t.Errorf("an ink is %q, its style %q", got, style.Render("ok"))
	}
}

// A coarse terminal has half-blocks, but neither quadrants nor braille.
func TestCoarse(t *testing.T) {
	th := themesToTry()["coarse"]
	for _, w := range []int{40, 80, 120, 200} {
		for _, p := range allParts(w) {
			for _, r := range p.draw(th, w, p.lines).String() {
				if r >= '▖' && r <= '▟' || r >= 0x2800 && r <= 0x28ff {
					t.Fatalf("%s at %d columns draws %c", p.name, w, r)
				}
			}
		}
	}
}

// counted is a part that counts how often it is drawn.
type counted struct {
	Strip
	times *int
}

func (c counted) Draw(th *Theme, w, h int) Block {
	*c.times++
	return c.Strip.Draw(th, w, h)
}

// An unchanged part is not drawn again; a changed one is.
func TestCached(t *testing.T) {
	th, other := themesToTry()["full"], themesToTry()["none"]
	var k Cached[counted]
	times := 0
	d := counted{tryStrip, &times}
	k.Draw(d, th, 80, 4)
	k.Draw(counted{tryStrip, &times}, th, 80, 4)
	if times != 1 {
		t.Errorf("drawn %d times", times)
	}
	d.Reason = "another one"
	k.Draw(d, th, 80, 4)
	k.Draw(d, other, 80, 4)
	k.Draw(d, other, 81, 4)
	got := k.Draw(d, other, 81, 5)
	if times != 5 || got.String() != d.Strip.Draw(other, 81, 5).String() {
		t.Errorf("drawn %d times", times)
	}
	var dials Cached[Dials]
	first := dials.Draw(tryDials, th, 80, 7)
	if again := dials.Draw(append(Dials(nil), tryDials...), th, 80, 7); &again[0] != &first[0] {
		t.Error("dials that look the same are drawn again")
	}
	turned := append(Dials(nil), tryDials...)
	turned[1].Number = "14.0"
	if now := dials.Draw(turned, th, 80, 7); now.String() == first.String() {
		t.Error("a dial that was turned is not drawn again")
	}
}
