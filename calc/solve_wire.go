package calc

import "slices"

// lengthSpec needs only a wire.
var lengthSpec = figureSpec{"length_per_mass", oLengthPerMass, "m/kg", "1000/(pi/4·{d}²·{rho})", []term{tWire, tRho},
	"definition"}

// meltSpec needs a feed or current too.
var meltSpec = figureSpec{"melt_rate", oMelt, "g/min", "0.06·pi/4·{d}²·{v_w}·{rho}", []term{tWire, tFeed, tRho},
	"definition: all that melts, spatter included"}

// Wire computes what concerns the wire alone: its mass and length, and, where the job gives a feed or a current, the
// other of the two with volts, melting and deposition. The joint does not matter. Errors as Solve.
func Wire(job Job) (Card, error) {
	moving := job.Feed.Set || job.Amps.Set
	job.Travel = Some(1) // any: nothing here depends on it
	b, card, err := laidOut(nil, job)
	if err != nil {
		return Card{}, err
	}
	if !moving {
		b.exact(inFeed, 1)
	}
	s, err := b.spread()
	if err != nil {
		return Card{}, settingError(err, card)
	}
	add := func(spec *figureSpec) {
		if f, ok := b.figure(spec, s); ok {
			b.settingBasis(&f, card, &suggestion{}, &verdict{})
			card.Figures = append(card.Figures, f)
		}
	}
	add(specByName("wire_mass_per_length"))
	add(&lengthSpec)
	if moving {
		for _, name := range [...]string{"wire_feed", "current", "volts", "deposition_rate", "pulse_frequency"} {
			add(specByName(name))
		}
		add(&meltSpec)
	}
	card.Job.Travel, card.Used.Travel = Opt{}, Opt{}
	w := warnings{card: card}
	w.wire()
	if moving {
		w.arc(b, s)
	}
	card.Warnings = w.list
	return *card, nil
}

func specByName(name string) *figureSpec {
	for _, list := range [...][]figureSpec{settingSpecs[:], resultSpecs[:]} {
		if i := slices.IndexFunc(list, func(s figureSpec) bool { return s.name == name }); i >= 0 {
			return &list[i]
		}
	}
	return nil
}
