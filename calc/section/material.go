package section

import "math"

// Material is a base metal; heats are per volume, J/mm3.
type Material struct {
	K, RhoC           float64 // W/mmK, J/mm3K; for Steel the means to which its curves are scaled, see SteelMean
	Solidus, Liquidus float64 // C
	Latent            float64 // J/mm3
	Steel             bool    // use the curves of EN 1993-1-2, times K and RhoC over SteelMean
}

// SteelMean is the pair of constants that corresponds to the curves of EN 1993-1-2: with exactly these the
// curves are unscaled.
var SteelMean = struct{ K, RhoC float64 }{0.040, 0.0052}

// Filler is the brazing alloy.
type Filler struct {
	K                 float64 // solid, W/mmK
	Stir              float64 // factor on the liquid's conductivity
	RhoC              float64 // J/mm3K
	Latent            float64 // J/mm3
	Solidus, Liquidus float64 // C
	Toe               float64 // C, at which the last liquid at the edge freezes
}

// curve is a material prepared for the solver: volumetric enthalpy as a function of temperature.
type curve struct {
	steel             bool
	k, c              float64 // W/mmK and J/mm3K, or their factors on steel's curves
	solidus, liquidus float64
	latent            float64 // J/mm3
	melt              float64 // latent over the melting range, J/mm3K
}

// leastRange is the least melting range, K: a step would skip a narrower one and show a false peak. With 20 K
// instead of 1 K the peak of molten copper changes by 5 K.
const leastRange = 20

func (m *Material) curve() curve {
	liquidus := max(m.Liquidus, m.Solidus+leastRange)
	c := curve{steel: m.Steel, k: m.K, c: m.RhoC, solidus: m.Solidus, liquidus: liquidus, latent: m.Latent,
		melt: m.Latent / (liquidus - m.Solidus)}
	if m.Steel {
		c.k, c.c = m.K/SteelMean.K, m.RhoC/SteelMean.RhoC
	}
	return c
}

func (f *Filler) curve() curve {
	return curve{k: f.K, c: f.RhoC, solidus: f.Solidus, liquidus: f.Liquidus, latent: f.Latent,
		melt: f.Latent / (f.Liquidus - f.Solidus)}
}

// Enthalpy is the filler's heat over 20 C when half of it has frozen, J/mm3: the heat still in the metal when
// it stops flowing.
func (f *Filler) Enthalpy() float64 {
	c := f.curve()
	h, _ := c.heat((f.Solidus + f.Liquidus) / 2)
	return h
}

// heat returns the enthalpy at t over 20 C, J/mm3, and its slope, J/mm3K.
func (m *curve) heat(t float64) (h, slope float64) {
	if m.steel {
		h, slope = steelHeat(t)
		h, slope = h*m.c, slope*m.c
	} else {
		h, slope = m.c*(t-20), m.c
	}
	if t > m.solidus {
		return m.melting(t, h, slope)
	}
	return h, slope
}

// melting adds the heat of melting above the solidus.
func (m *curve) melting(t, h, slope float64) (float64, float64) {
	if t > m.liquidus {
		return h + m.latent, slope
	}
	return h + (t-m.solidus)*m.melt, slope + m.melt
}

// phase numbers the ranges between the sharp bends of the enthalpy: 0 solid, 1 melting, 2 liquid.
func (m *curve) phase(t float64) int {
	switch {
	case t > m.liquidus:
		return 2
	case t > m.solidus:
		return 1
	}
	return 0
}

// SteelConductivity is steel's conductivity at t times a factor, W/mmK, by EN 1993-1-2:2005 3.4.1.3.
func SteelConductivity(t, factor float64) float64 {
	switch {
	case t >= 800:
		return factor * 0.0273
	case t < 20:
		t = 20
	}
	return factor * (0.054 - 3.33e-5*t)
}

// Steel's enthalpy by EN 1993-1-2:2005 3.4.1.2 on a grid of 5 K, times 7.85 g/cm3, from 20 to 1200 C; outside
// that range it continues with the slope at the end. The standard's peak at 735 C is on a grid point.
const (
	steelFrom, steelStep = 20.0, 5.0
	SteelDensity         = 7.85e-3 // g/mm3, EN 1993-1-2 3.2.2
	steelLast            = (1200 - 20) / 5
)

var steelTable = makeSteelTable()

// straight is a straight piece of steel's enthalpy: its start, K over steelFrom and J/mm3, and its slope.
type straight struct{ from, h, slope float64 }

// at is the enthalpy at t, J/mm3.
func (s *straight) at(t float64) float64 { return s.h + s.slope*(t-steelFrom-s.from) }

func makeSteelTable() (list [steelLast]straight) {
	h := 0.0
	for i := range list {
		above := SteelDensity * SteelHeat(steelFrom+steelStep*float64(i+1))
		list[i] = straight{steelStep * float64(i), h, (above - h) * (1 / steelStep)}
		h = above
	}
	return list
}

// SteelHeat is steel's enthalpy without melting, J/g from 20 C: the specific heat of EN 1993-1-2:2005 3.4.1.2,
// integrated in closed form. Beyond 1200 C it continues with its last slope.
func SteelHeat(t float64) float64 {
	cubic := func(t float64) float64 {
		return 0.425*t + 0.773e-3/2*t*t - 1.69e-6/3*t*t*t + 2.22e-9/4*t*t*t*t
	}
	h := cubic(min(t, 600)) - cubic(20)
	if t > 600 {
		b := min(t, 735)
		h += 0.666*(b-600) + 13.002*math.Log((738-600)/(738-b))
	}
	if t > 735 {
		b := min(t, 900)
		h += 0.545*(b-735) + 17.820*math.Log((b-731)/(735-731))
	}
	if t > 900 {
		h += 0.650 * (t - 900)
	}
	return h
}

func steelHeat(t float64) (h, slope float64) {
	s := &steelTable[steelStretch(t)]
	return s.at(t), s.slope
}

func steelStretch(t float64) int32 {
	i := int32((t - steelFrom) * (1 / steelStep))
	switch {
	case i < 0:
		return 0
	case i >= steelLast:
		return steelLast - 1
	}
	return i
}
