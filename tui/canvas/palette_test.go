package canvas

import (
	"strconv"
	"testing"
)

// The backgrounds of terminals: black and white, and similar ones in common colour schemes (common practice, no
// source). On lighter ones (#2b303b) and yellower ones (#fdf6e3) the contrast of the blue, the red and the bronze falls
// to 4.3 to 1: colours with enough contrast there could not be told apart by colour-deficient eyes. The contrast themes
// are for these backgrounds.
var grounds = [palettes][]string{
	onDark:          {"#000000", "#121212", "#1e1e1e", "#282828", "#002b36", "#300a24"},
	onLight:         {"#ffffff", "#fafafa"},
	contrastOnDark:  {"#000000", "#121212", "#1e1e1e", "#282828", "#002b36", "#300a24"},
	contrastOnLight: {"#ffffff"},
}

// need is the contrast that a palette's texts must have.
var need = [palettes]float64{4.5, 4.5, 7, 7}

// The first sixteen colours as terminals show them by default: VGA text mode and xterm. From memory, confidence high.
var (
	vga16 = []string{"#000000", "#aa0000", "#00aa00", "#aa5500", "#0000aa", "#aa00aa", "#00aaaa", "#aaaaaa",
		"#555555", "#ff5555", "#55ff55", "#ffff55", "#5555ff", "#ff55ff", "#55ffff", "#ffffff"}
	xterm16 = []string{"#000000", "#cd0000", "#00cd00", "#cdcd00", "#0000ee", "#cd00cd", "#00cdcd", "#e5e5e5",
		"#7f7f7f", "#ff0000", "#00ff00", "#ffff00", "#5c5cff", "#ff00ff", "#00ffff", "#ffffff"}
)

var paletteNames = [palettes]string{"dark", "light", "contrast on dark", "contrast on light"}

// texts are the roles for text on the terminal's own background.
func texts() []Role {
	list := []Role{Text, Quiet, Accent}
	for s := range State(states) {
		list = append(list, s.role())
	}
	return list
}

// onGrounds are the roles for text on a coloured background, each with that background.
func onGrounds() (list [][2]Role) {
	list = [][2]Role{{OnAccent, Accent}, {Text, ChipGround}, {Quiet, ChipGround}}
	for s := range State(states) {
		list = append(list, [2]Role{stateOn + Role(s), s.ground()})
	}
	for l := LandCold; l < lands; l++ {
		list = append(list, [2]Role{landOn + Role(l), l.ground()})
	}
	return list
}

// own is a usual text colour of terminals, for roles without a colour.
func own(t *testing.T, s string, palette int) rgb {
	if s == "" {
		return hexColour(t, [...]string{"#d0d0d0", "#303030", "#d0d0d0", "#303030"}[palette])
	}
	return indexed(t, s)
}

func TestTextsCanBeRead(t *testing.T) {
	for p := range palettes {
		for _, r := range texts() {
			c := tones[r][p].indexed
			if c == "" {
				continue
			}
			for _, ground := range grounds[p] {
				if got := contrast(indexed(t, c), hexColour(t, ground)); got < need[p] {
					t.Errorf("%s, role %d: %s on %s is %.2f to 1", paletteNames[p], r, c, ground, got)
				}
			}
		}
		for _, on := range onGrounds() {
			text, ground := tones[on[0]][p].indexed, tones[on[1]][p].indexed
			least := need[p]
			if on[1] >= landInk && on[1] < landOn {
				least = 4.5 // words on the map, which the legend and the list of edges repeat
			}
			if got := contrast(own(t, text, p), own(t, ground, p)); got < least {
				t.Errorf("%s, roles %v: %s on %s is %.2f to 1", paletteNames[p], on, text, ground, got)
			}
		}
	}
}

// In sixteen colours the palette is the terminal's. With the two usual ones, every text can be read on black or white,
// and every text on a coloured background on that.
func TestTextsCanBeReadInSixteen(t *testing.T) {
	for p := range palettes {
		for _, usual := range [][]string{vga16, xterm16} {
			at := func(s string) rgb {
				n, err := strconv.Atoi(s)
				if err != nil || n > 15 {
					t.Fatalf("%q is not one of sixteen", s)
				}
				return hexColour(t, usual[n])
			}
			for _, r := range texts() {
				if c := tones[r][p].ansi; c != "" && contrast(at(c), hexColour(t, grounds[p][0])) < need[p] {
					t.Errorf("%s, role %d: colour %s cannot be read", paletteNames[p], r, c)
				}
			}
			for _, on := range onGrounds() {
				text, ground := tones[on[0]][p].ansi, tones[on[1]][p].ansi
				if text == "" || ground == "" {
					continue
				}
				// The worst case is brown and grey, in which the two palettes differ most.
				if got := contrast(at(text), at(ground)); got < 3.9 {
					t.Errorf("%s, roles %v: %s on %s is %.2f to 1", paletteNames[p], on, text, ground, got)
				}
			}
		}
	}
}

// apart fails if two of these roles are closer than this CIEDE2000 distance for any eye. A distance of 1 can just be
// told apart side by side.
func apart(t *testing.T, palette int, what string, list []Role, least float64) {
	t.Helper()
	for eye, m := range vision {
		for i, a := range list {
			for _, b := range list[:i] {
				x, y := tones[a][palette].indexed, tones[b][palette].indexed
				if d := deltaE(seen(indexed(t, x), m), seen(indexed(t, y), m)); d < least {
					t.Errorf("%s, %s: %s and %s are %.1f apart for %s, want %g",
						paletteNames[palette], what, x, y, d, eye, least)
				}
			}
		}
	}
}

// No two states and no two lands look alike for any eye. The steps of good are one land and differ only in lightness;
// so do the grey of unjudged states and the colours of judged ones.
func TestColoursStayApart(t *testing.T) {
	colourful := [...]State{Good, Cold, Hot, Burns, Outside}
	for p := range palettes {
		var inks, lamps []Role
		for _, s := range colourful {
			inks, lamps = append(inks, s.role()), append(lamps, s.ground())
			apart(t, p, "not judged", []Role{s.role(), NotJudged.role()}, 7)
		}
		apart(t, p, "states", inks, [...]float64{17, 12, 13, 13}[p])
		apart(t, p, "strips", lamps, [...]float64{16, 12, 13, 13}[p])
		rest := []Role{LandCold.ground(), LandHot.ground(), LandBurns.ground(), LandOutside.ground()}
		good := []Role{LandGood1.ground(), LandGood2.ground(), LandGood3.ground()}
		for _, g := range good {
			apart(t, p, "lands", append(rest[:len(rest):len(rest)], g), 11.5)
		}
		apart(t, p, "steps of good", good, 8.5)
		var drawn []Role
		for _, part := range [...]part{partFirst, partSecond, partBead, partBoiled, partMelted} {
			drawn = append(drawn, part.role())
		}
		apart(t, p, "parts", drawn, 9)
	}
}

// A state is never shown by colour alone: each has its own sign and word, and the sign can be drawn big.
func TestStatesNeedNoColour(t *testing.T) {
	signs, words := map[string]bool{}, map[string]bool{}
	for s := range State(states) {
		if width(s.Sign()) != 1 || !Drawable(s.Sign()) || !Drawable(s.Word()) || !Drawable(s.Short()) {
			t.Errorf("state %d cannot be drawn: %q %q", s, s.Sign(), s.Word())
		}
		signs[s.Sign()], words[s.Word()] = true, true
	}
	if len(signs) != states || len(words) != states {
		t.Errorf("%d signs and %d words of %d states", len(signs), len(words), states)
	}
}
