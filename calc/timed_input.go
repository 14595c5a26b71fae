package calc

import (
	"math"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// rhythm is the input of the sheet's plane, from the board's numbers and the outputs of wire and arc.
func (b *board) rhythm(card *Card, o *[outs]float64) thinsheet.Rhythm {
	f, k := &card.Setup.Filler, &b.inputs
	feed := formula.WireArea(k[inWire]) * o[oFeed] * k[inDensity] * 1e-3 * k[inDeposit] // g/s
	r := thinsheet.Rhythm{
		Input: thinsheet.Input{
			Filler: FillerTable(f), Stir: tables.Stirring.V, Gap: k[inGap], Sigma: k[inSpread],
			Power: k[inEta] * o[oVolts] * o[oAmps], Feed: feed,
			Droplet: f.HLiq.V + tables.DropletHeat.V*tables.DropletSuperheat.V,
			Loss:    k[inLoss] * 1e-6, Start: k[inRoom],
		},
		MeltDepth: tables.EdgeMelt.V, Shortest: tables.ShortestOn.V, LeastOff: tables.QuickestOff.V,
		LongestOn: tables.LongestOn.V, Longest: tables.LongestOff.V,
		FixedOn: card.Job.ArcOn.V, FixedOff: card.Job.ArcOff.V, FixedStep: card.Job.SpotStep.V,
	}
	r.LongestOn, r.Longest = max(r.LongestOn, 1.01*r.FixedOn), max(r.Longest, 1.01*r.FixedOff)
	if taught := &card.Used.Rhythm; taught.Set() {
		r.Stir = taught.Stir
	}
	r.Surface = !throughJoint(card.Used.Joint)
	r.Section = k[inGap] * MinCore(card.Setup.Joined()) * (1 + k[inReinforce])
	b.fan(card, &r.Input)
	return r
}

// throughJoint reports whether the filler must come through to the back of the joint.
func throughJoint(joint string) bool { return joint == "butt" || joint == "corner" }

// fan adds the joint's members as arms about its line.
func (b *board) fan(card *Card, in *thinsheet.Input) {
	k := &b.inputs
	aim := card.Used.Aim.V
	base := [2]thinsheet.Material{BaseTable(&card.Setup.Members[0].Metal, k[inConduct1], k[inHeatCap1])}
	thick := [2]float64{k[inThick1], k[inThick2]}
	if card.Setup.One {
		base[1], thick[1] = base[0], thick[0]
	} else {
		base[1] = BaseTable(&card.Setup.Members[1].Metal, k[inConduct2], k[inHeatCap2])
	}
	sigma := k[inSpread]
	through := 1 // arms of the second member
	switch card.Used.Joint {
	case "tee":
		sigma *= math.Sqrt2 // the arc points at half a right angle to both faces
		through = 2
	case "lap":
		through = 2
	}
	arm := func(i int, lit bool, aim float64) thinsheet.Arm {
		return thinsheet.Arm{Base: base[i], Thick: thick[i], Lit: lit, Aim: aim, Sigma: sigma}
	}
	same := card.Setup.One || thick[0] == thick[1] && card.Setup.Members[0].Metal.ID == card.Setup.Members[1].Metal.ID
	if through == 1 && same && aim == 0 {
		in.Arms, in.Mirror = []thinsheet.Arm{arm(0, true, 0)}, true
		return
	}
	in.Arms = []thinsheet.Arm{arm(0, true, -aim), arm(1, true, aim)}
	if through == 2 {
		in.Arms = append(in.Arms, arm(1, false, 0)) // behind or under the first member, where no arc shines
	}
}

// FillerTable is a filler with constant properties, as the plane's solver needs it.
func FillerTable(f *tables.Filler) thinsheet.Material {
	return thinsheet.Plain(f.Density.V*1e-3, tables.SolidFillerConductivity.V, (f.HeatCold.V+f.HeatHot.V)/2, f.Latent.V,
		f.Solidus.V, max(f.Liquidus.V, f.Solidus.V+1))
}

// steelPoints are where the curves of EN 1993-1-2 are read, C; its peak at 735 is among them.
var steelPoints = [...]float64{20, 200, 400, 550, 650, 700, 725, 735, 745, 770, 800, 900, 1200}

// BaseTable is a base metal of a conductivity, W/mmK, and a heat capacity, J/mm3K, as the plane's solver needs it:
// steel with the curves of EN 1993-1-2 scaled to them, other metals with constant properties.
func BaseTable(m *tables.Metal, conductivity, heatCapacity float64) thinsheet.Material {
	density, liquidus := m.Density.V*1e-3, max(m.Liquidus.V, m.Solidus.V+1)
	if m.Family != tables.Steel {
		return thinsheet.Plain(density, conductivity, heatCapacity/density, m.Latent.V, m.Solidus.V, liquidus)
	}
	k, c := conductivity/section.SteelMean.K, heatCapacity/section.SteelMean.RhoC
	out := thinsheet.Material{Density: density, Solidus: m.Solidus.V, Liquidus: liquidus}
	points := append(slices.Clone(steelPoints[:]), m.Solidus.V, liquidus, liquidus+500)
	for _, t := range points {
		h := section.SteelHeat(t) * c * section.SteelDensity / density
		if t >= liquidus {
			h += m.Latent.V
		}
		out.T, out.H, out.K = append(out.T, t), append(out.H, h), append(out.K, section.SteelConductivity(t, k))
	}
	return out
}

// read reports whether the current was read at a known wire feed.
func (g *timedRun) read() bool { return g.card.Job.Feed.Set && g.card.Job.Amps.Set }

// readPower is the relative interval of volts times amps, narrowed by the job's own readings of a meter. The times
// depend on up to the fourth power of the power, so that reading both amps and volts narrows them more than anything
// else.
func (b *board) readPower(card *Card) (low, high float64) {
	s, err := b.spread()
	if err != nil {
		return 0.7, 1.4 // cannot happen: the chain gave these values a moment ago
	}
	doubt := func(end *[outs]float64, i out) float64 { return end[i]/s.value[i] - 1 }
	weak, strong := doubt(&s.low, oVolts), doubt(&s.high, oVolts)
	two, j := 2*tables.ReadingSigma.V, &card.Job
	switch read := j.Feed.Set && j.Amps.Set; {
	case read && j.Volts.Set:
		return 1 - math.Sqrt2*two, 1 + math.Sqrt2*two
	case read:
		return 1 - math.Hypot(weak, two), 1 + math.Hypot(strong, two)
	}
	return 1 - min(math.Hypot(doubt(&s.low, oAmps), weak), 0.9), 1 + math.Hypot(doubt(&s.high, oAmps), strong)
}
