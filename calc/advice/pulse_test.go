package advice

import (
	"errors"
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// Over every wire and feed: the four figures give back the mean current, lie inside their bands, and change
// without a jump as the feed does.
func TestPulseFiguresGiveTheMeanCurrent(t *testing.T) {
	steps := deep.Many(6, 120)
	for _, wire := range deep.Of(t, []float64{0.8, 0.9, 1.0, 1.2, 1.6}, 3) {
		var last, time float64
		for i := range steps + 1 {
			feed := 1.5 * math.Pow(8, float64(i)/float64(steps))
			card, err := calc.Solve(calc.Job{Metal: "mild-steel", Thickness: calc.Some(2), Joint: "overlay",
				Mode: "pulsed",
				Wire: calc.Some(wire), Feed: calc.Some(feed), Travel: calc.Some(8)})
			if err != nil {
				continue
			}
			p, err := Pulse(&card)
			if err != nil || len(p.Reasons) == 0 {
				t.Fatal(err)
			}
			value := map[string]float64{}
			for _, f := range p.Figures {
				if !(f.Low <= f.Value && f.Value <= f.High) {
					t.Errorf("%g mm, %.3g m/min: %s %g (%g to %g)", wire, feed, f.Name, f.Value, f.Low, f.High)
				}
				value[f.Name] = f.Value
			}
			pairs(t, &p, wire, feed)
			if now := value["pulse_time"]; now > 0 {
				if time > 0 && math.Abs(math.Log(now/time)) > 3/float64(steps) {
					t.Errorf("%g mm, %.3g m/min: the pulse time goes from %g to %g ms", wire, feed, time, now)
				}
				time = now
			}
			base, alight := value["pulse_base"]
			if !alight {
				if len(p.Warnings) == 0 && len(p.Figures) > 0 {
					t.Errorf("%g mm, %.3g m/min: no base and no word why", wire, feed)
				}
				continue
			}
			share := value["pulse_frequency"] * value["pulse_time"] / 1000
			mean, _ := card.Figure("current")
			for _, end := range [2]float64{mean.Low, mean.High} { // at the same wire feed
				at := max(0, (end-value["pulse_peak"]*share)/(1-share))
				if f := pulseFigure(&p, "pulse_base"); at < f.Low-1e-9 || at > f.High+1e-9 {
					t.Errorf("%g mm, %.3g m/min: at %g A mean the base is %g A, outside %g to %g", wire, feed, end,
						at, f.Low, f.High)
				}
			}
			if got := value["pulse_peak"]*share + base*(1-share); math.Abs(got-mean.Value) > 1e-6*mean.Value {
				t.Errorf("%g mm, %.3g m/min: the pulse's mean is %g A, the card's %g", wire, feed, got, mean.Value)
			}
			if e := value["effective_current"]; e < mean.Value || last > 0 &&
				math.Abs(math.Log(e/last)) > 4/float64(steps) {
				t.Errorf("%g mm, %.3g m/min: effective current %g after %g, mean %g", wire, feed, e, last, mean.Value)
			}
			last = value["effective_current"]
		}
		if last == 0 {
			t.Errorf("%g mm: no feed gave a pulse", wire)
		}
	}
}

func pulseFigure(p *Page, name string) calc.Figure { f, _ := p.Figure(name); return f }

// For an arc without pulses the error says what to type.
func TestOnlyAPulsedArcHasAPulse(t *testing.T) {
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20})
	if err != nil {
		t.Fatal(err)
	}
	var m *mistake.Error
	if _, err := Pulse(&card); !errors.As(err, &m) || m.Hint == "" {
		t.Error(err)
	}
}

// pairs checks that the time's band is at least as wide as that of its peak asks for, by the square, as far as
// the arc stays alight, and that no peak is at an end of its band.
func pairs(t *testing.T, p *Page, wire, feed float64) {
	peak, ok := p.Figure("pulse_peak")
	time, _ := p.Figure("pulse_time")
	if !ok {
		return
	}
	if !(peak.Low < 0.99*peak.Value && peak.High > 1.01*peak.Value) {
		t.Errorf("%g mm, %.3g m/min: the peak %g sits on an end of %g to %g", wire, feed, peak.Value, peak.Low,
			peak.High)
	}
	if want := math.Pow(peak.High/peak.Value, 2) * 0.999; time.Value/time.Low < want || time.High < time.Value*1.01 {
		t.Errorf("%g mm, %.3g m/min: time %g (%g to %g) beside a peak of %g (%g to %g)", wire, feed, time.Value,
			time.Low,
			time.High, peak.Value, peak.Low, peak.High)
	}
}
