package calc_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

func TestMain(m *testing.M) { deep.Main(m, 6) }

// anyJob draws jobs: two in three are sensible, the third holds anything.
func anyJob() *rapid.Generator[calc.Job] {
	return rapid.Custom(func(t *rapid.T) calc.Job {
		odd := rapid.IntRange(0, 2).Draw(t, "odd") == 0
		pick := func(name string, ids ...string) string {
			if odd {
				ids = append(ids, "nonsense")
			}
			return rapid.SampledFrom(append(ids, "", "")).Draw(t, name)
		}
		opt := func(name string, low, high float64) calc.Opt {
			switch kind := rapid.IntRange(0, 11).Draw(t, name+" kind"); {
			case kind == 0 && odd:
				return calc.Some(rapid.Float64().Draw(t, name))
			case kind < 5:
				return calc.Some(rapid.Float64Range(low, high).Draw(t, name))
			}
			return calc.Opt{}
		}
		return calc.Job{
			Metal: pick("metal", metalIDs()...), Metal2: pick("metal2", metalIDs()...),
			Gauge: gaugeOf(t, "gauge", odd), Gauge2: gaugeOf(t, "gauge2", odd),
			Thickness: opt("thickness", 0.05, 150), Thickness2: opt("thickness2", 0.05, 150),
			Coating: pick("coating", "none", "G60", "T1-40"), Joint: pick("joint", "lap", "butt", "tee", "corner",
				"edge", "plug", "overlay"),
			Gap: opt("gap", 0, 25), Filler: pick("filler", fillerIDs()...), Wire: opt("wire", 0.4, 3.2),
			Mode: pick("mode", "dip", "pulsed", "timed"), Gas: pick("gas", "argon", "argon-co2-18"),
			Feed: opt("feed", 0.3, 40), Amps: opt("amps", 5, 600), Volts: opt("volts", 5, 60), Travel: opt("travel",
				0.3, 60),
			StickOut: opt("stickout", 3, 50), ArcOn: opt("on", 0.02, 10), ArcOff: opt("off", 0.02, 20),
			SpotStep: opt("step", 0.1, 50),
			Preheat:  opt("preheat", -40, 700), Phi: opt("phi", 1, 8), PhiSigma: opt("phi sigma", 0.001, 2),
			VoltFactor: opt("volt factor", 0.5, 2), Leg: opt("leg", 0.2, 50),
		}
	})
}

func gaugeOf(t *rapid.T, name string, odd bool) int {
	if odd {
		return rapid.IntRange(-1, 40).Draw(t, name)
	}
	return rapid.SampledFrom([]int{0, 8, 10, 12, 16, 18, 20, 22, 24, 28, 30}).Draw(t, name)
}

func metalIDs() (ids []string) {
	for _, m := range tables.Metals {
		ids = append(ids, m.ID)
	}
	return ids
}

func fillerIDs() (ids []string) {
	for _, f := range tables.Fillers {
		ids = append(ids, f.ID)
	}
	return ids
}

// checkCard checks what must be true of every card.
func checkCard(t interface{ Fatalf(string, ...any) }, j calc.Job, card *calc.Card) {
	names := map[string]bool{}
	for _, f := range card.Figures {
		switch {
		case names[f.Name]:
			t.Fatalf("%+v: %s twice", j, f.Name)
		case math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || math.IsNaN(f.Low) || math.IsInf(f.High, 0) ||
			math.IsNaN(f.High):
			t.Fatalf("%+v: %s is %g, %g to %g", j, f.Name, f.Value, f.Low, f.High)
		case f.Low > f.Value || f.Value > f.High:
			t.Fatalf("%+v: %s is %g outside %g to %g", j, f.Name, f.Value, f.Low, f.High)
		case f.Unit == "" || f.Basis.Formula == "" || f.Basis.Source == "" || f.Basis.Known == "":
			t.Fatalf("%+v: %s lacks unit or reason: %+v", j, f.Name, f)
		}
		for _, in := range f.Basis.Inputs {
			if math.IsNaN(in.Value) || math.IsInf(in.Value, 0) || math.IsNaN(in.Sensitivity) ||
				math.IsInf(in.Sensitivity, 0) {
				t.Fatalf("%+v: %s rests on %s = %g, %g %%", j, f.Name, in.Name, in.Value, in.Sensitivity)
			}
		}
		names[f.Name] = true
	}
	for _, want := range []string{"wire_feed", "current", "volts", "gas_flow", "stickout", "deposition_rate"} {
		if !names[want] {
			t.Fatalf("%+v: no %s", j, want)
		}
	}
	if !hasWarning(card, "test-bead") || !hasWarning(card, "stops") {
		t.Fatalf("%+v: the card does not say to try first, or when to stop", j)
	}
}

func TestAnyJobGivesACardOrSaysWhatToType(t *testing.T) {
	cards := 0
	rapid.Check(t, func(t *rapid.T) {
		j := anyJob().Draw(t, "job")
		card, err := calc.Solve(j)
		if err != nil {
			var f *mistake.Error
			if !errors.As(err, &f) || f.Field == "" || f.Hint == "" {
				t.Fatalf("%+v: error %v says not what to type", j, err)
			}
			return
		}
		cards++
		checkCard(t, j, &card)
	})
	if cards == 0 {
		t.Fatal("no job at all had a card: the test shows nothing")
	}
}

// Every sensible pair of metal, joint and mode has a card.
func TestEveryMetalJointAndMode(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("every metal, joint and mode")
	}
	var jobs []calc.Job
	for _, m := range tables.Metals {
		for _, joint := range tables.Joints {
			for _, mode := range tables.Modes {
				jobs = append(jobs, calc.Job{Metal: m.ID, Gauge: 18, Joint: joint.ID, Mode: mode.ID})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 24) {
		card := mustSolve(t, j)
		checkCard(t, j, &card)
	}
}

func BenchmarkSolveGiven(b *testing.B) {
	j := practiceLap()
	j.Travel = calc.Some(8)
	b.ReportAllocs()
	for b.Loop() {
		calc.ForgetSections()
		if _, err := calc.Solve(j); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolveSearch(b *testing.B) {
	j := practiceLap()
	j.Feed = calc.Opt{}
	benchmarkSearch(b, j)
}

// For unequal sheets the aim is open too.
func BenchmarkSolveSearchUnequal(b *testing.B) {
	j := practiceLap()
	j.Feed, j.Metal2, j.Gauge2 = calc.Opt{}, "galvanized", 12
	benchmarkSearch(b, j)
}

func BenchmarkSolveSearchButt(b *testing.B) {
	benchmarkSearch(b, calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt"})
}

func BenchmarkSolveSearchThick(b *testing.B) {
	benchmarkSearch(b, calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "tee"})
}

func benchmarkSearch(b *testing.B, j calc.Job) {
	b.ReportAllocs()
	for b.Loop() {
		calc.ForgetSections()
		if _, err := calc.Solve(j); err != nil {
			b.Fatal(err)
		}
	}
}
