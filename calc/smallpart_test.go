package calc

import (
	"regexp"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

var longNumber = regexp.MustCompile(`\d\.\d{5}|without a value`)

// A part that warms up until its metal is as hot as it melts still has its card. One that gets as hot as the filler is
// refused in a few digits, with what to type instead; but what stops the job is always said.
func TestSmallPartsAreAnswered(t *testing.T) {
	if testing.Short() {
		t.Skip("dozens of searches")
	}
	type part struct {
		metal string
		wide  float64
		joint string
	}
	var all []part
	for _, m := range tables.Metals {
		for wide := 15.0; wide < 500; wide *= 1.3 {
			for _, joint := range []string{"lap", "tee", "butt"} {
				all = append(all, part{m.ID, wide, joint})
			}
		}
	}
	all = append(deep.Of(t, all, 12), part{"brass", 15, "lap"}, part{"brass", 61, "tee"},
		part{"brass", 100, "tee"})
	for _, x := range all {
		j := Job{Metal: x.metal, Thickness: Some(0.74), Joint: x.joint, PartWidth: Some(x.wide), Travel: Some(3.89)}
		c, err := Solve(j)
		if m := mistake.Of(err); err != nil && (m == nil || m.Hint == "" || longNumber.MatchString(m.What)) {
			t.Errorf("%s %s %.0f mm wide: %v", x.metal, x.joint, x.wide, err)
		}
		if x.metal == "brass" && !c.Stopped() {
			t.Errorf("brass %s %.0f mm wide is not stopped: %v", x.joint, x.wide, err)
		}
		j.Hazard = "tank"
		if c, err = Solve(j); !c.Stopped() {
			t.Errorf("a tank of %s, %s %.0f mm wide, is not stopped: %v", x.metal, x.joint, x.wide, err)
		}
	}
}

// Rounded numbers have their digits and no exponent.
func TestDigitsHaveNoExponent(t *testing.T) {
	for want, got := range map[string]string{"3930": Digits(3927, 3), "14600": Digits(14567, 3),
		"0.0123": Digits(0.012345, 3), "1.3": Digits(1.26, 2), "120": Digits(123, 2), "0": Digits(0, 3),
		"-4.5": Digits(-4.51, 2), "100000000": Digits(1e8, 3)} {
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// The arc of a pulsed mode is not called a short arc.
func TestAnUnsteadyPulsedArcIsNoShortArc(t *testing.T) {
	for _, mode := range []string{"dip", "pulsed"} {
		c := card(t, Job{Metal: "mild-steel", Thickness: Some(1.5), Mode: mode, Feed: Some(1.5), Travel: Some(7)})
		at := warningOf(c, "arc-unsteady")
		if at == "" || regexp.MustCompile("short arc").MatchString(at) != (mode == "dip") {
			t.Errorf("%s: %q", mode, at)
		}
	}
}

func warningOf(c *Card, code string) string {
	for _, w := range c.Warnings {
		if w.Code == code {
			return w.Text
		}
	}
	return ""
}
