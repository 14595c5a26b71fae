package calc

import (
	"math"
	"math/rand/v2"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// odd draws the first random jobs, or, in a sample, those of its seed. The jobs of a deeper run do not depend on the
// seed, so that it has the same jobs and more.
func odd[J any](draw func(seed int) J) (jobs []J) {
	for seed := range deep.Many(1, 2) {
		if !deep.Run() {
			seed = int(deep.Seed()) - 1
		}
		jobs = append(jobs, draw(seed+1000))
	}
	return jobs
}

// oddJob is a job over the whole range of choices, few of them sensible, a different one for each seed.
func oddJob(seed int) Job {
	r := rand.New(rand.NewPCG(uint64(seed), 7))
	metals, fillers := tables.Metals, tables.Fillers
	pick := func(ids ...string) string { return ids[r.IntN(len(ids))] }
	some := func(share, low, high float64) (o Opt) {
		if r.Float64() < share {
			o = Some(low + (high-low)*r.Float64())
		}
		return o
	}
	spread := func(share, low, high float64) (o Opt) { // as many from 0.1 to 1 as from 1 to 10
		if r.Float64() < share {
			o = Some(low * math.Pow(high/low, r.Float64()))
		}
		return o
	}
	j := Job{Metal: metals[r.IntN(len(metals))].ID, Joint: pick("lap", "tee", "butt", "corner", "edge", "overlay"),
		Mode: pick("dip", "pulsed", "")}
	if r.IntN(3) > 0 {
		j.Thickness = spread(1, 0.05, 4)
	} else {
		j.Gauge = 10 + r.IntN(21)
	}
	if r.IntN(2) == 0 {
		j.Metal2, j.Thickness2 = metals[r.IntN(len(metals))].ID, spread(0.8, 0.05, 4)
	}
	if r.IntN(2) == 0 {
		j.Filler = fillers[r.IntN(len(fillers))].ID
	}
	j.Wire, j.Gap, j.StickOut, j.Volts = spread(0.5, 0.4, 3.2), some(0.3, 0, 5), some(0.3, 3, 50), some(0.15, 5, 60)
	j.Preheat, j.Phi, j.Eta, j.Aim = some(0.25, -40, 700), some(0.1, 1, 8), some(0.1, 0.3, 1), some(0.1, -10, 10)
	j.Leg, j.ZincLimit = some(0.1, 0.2, 50), some(0.2, 0.5, 100)
	return j
}

// oddTimed is oddJob with a timed arc, some of it given.
func oddTimed(seed int) Job {
	j := oddJob(seed)
	r := rand.New(rand.NewPCG(uint64(seed), 9))
	given := func(of int, low, high float64) (o Opt) {
		if r.IntN(of) == 0 {
			o = Some(low * math.Pow(high/low, r.Float64()))
		}
		return o
	}
	j.Mode = "timed"
	j.Gap.V *= 0.7
	j.Feed, j.ArcOn, j.ArcOff, j.SpotStep = given(4, 1, 15), given(4, 0.02, LongestOnOff), given(4, 0.02,
		LongestOnOff), given(8, 0.1, 50)
	return j
}
