package formula

import "math"

// Bar is a part that is heated over its middle and cools along its axis and from its skin: a shaft under an
// overlay, or a plate. The temperature is even over the section, as in a fin. It is symmetrical about its
// middle, and no heat leaves through its ends. Source: the fin equation, Incropera and DeWitt, Fundamentals of
// Heat and Mass Transfer, ch. 3 and 5.
type Bar struct {
	Half, Beyond float64 // half of the heated length, and the length beyond it on each side, mm
	K            float64 // W/mmK
	RhoC         float64 // J/mm3K
	Area         float64 // section, mm2
	Surface      float64 // skin over volume, 1/mm: 4/D of a shaft, 2/t of a plate
	Film         float64 // free convection, W/m2K
	Emissivity   float64
	Air          float64 // C

	cells   []float64
	width   float64
	warm    int // number of heated cells
	work    [2][]float64
	elapsed float64
}

const (
	stefanBoltzmann = 5.670374419e-8 // W/m2K4, exact since 2019
	kelvin          = 273.15
	barCells        = 48
)

// Start sets the whole bar to one temperature, C. It returns ErrRange if a size or a property is not above
// zero.
func (b *Bar) Start(temperature float64) error {
	if err := Positive([7]string{"length", "conductivity", "heat capacity", "section"}, b.Half, b.K, b.RhoC,
		b.Area); err != nil {
		return err
	}
	if !(b.Surface > 0) || b.Beyond < 0 || b.Film < 0 || b.Emissivity < 0 {
		return Outside("surface", b.Surface, "above zero, losses not below it")
	}
	b.warm = barCells
	n := barCells
	if b.Beyond > 0 {
		b.warm = max(6, int(barCells*b.Half/(b.Half+b.Beyond)))
		n = b.warm + int(math.Ceil(b.Beyond/(b.Half/float64(b.warm))))
		for n > 400 && b.warm > 3 { // a very long bar: coarser
			b.warm--
			n = b.warm + int(math.Ceil(b.Beyond/(b.Half/float64(b.warm))))
		}
	}
	b.width = b.Half / float64(b.warm)
	b.cells = make([]float64, n)
	for i := range b.cells {
		b.cells[i] = temperature
	}
	b.work = [2][]float64{make([]float64, n), make([]float64, n)}
	b.elapsed = 0
	return nil
}

// Mean is the mean temperature of the heated length, C.
func (b *Bar) Mean() float64 {
	sum := 0.0
	for _, t := range b.cells[:b.warm] {
		sum += t
	}
	return sum / float64(b.warm)
}

// step is one implicit step of dt seconds with power W in the heated length (both halves): conduction along the
// axis by backward Euler, with the skin's loss linearised at the old temperature.
func (b *Bar) step(dt, power float64) {
	n := len(b.cells)
	flow := b.K / (b.width * b.width) * dt / b.RhoC
	gain := power / (2 * b.Half * b.Area) * dt / b.RhoC
	c, d := b.work[0], b.work[1]
	air := math.Pow(b.Air+kelvin, 4)
	for i := range n {
		hot := b.cells[i] + kelvin
		film := (b.Film + b.Emissivity*stefanBoltzmann*4*hot*hot*hot) * 1e-6 // W/mm2K, slope of the loss
		loss := (b.Film*(b.cells[i]-b.Air) + b.Emissivity*stefanBoltzmann*(hot*hot*hot*hot-air)) * 1e-6
		own := 1 + film*b.Surface*dt/b.RhoC
		right := b.cells[i] + (film*b.cells[i]-loss)*b.Surface*dt/b.RhoC
		if i < b.warm {
			right += gain
		}
		low, high := flow, flow
		if i == 0 {
			low = 0
		}
		if i == n-1 {
			high = 0
		}
		diag := own + low + high
		if i > 0 {
			m := diag + low*c[i-1]
			c[i], d[i] = -high/m, (right+low*d[i-1])/m
		} else {
			c[i], d[i] = -high/diag, right/diag
		}
	}
	b.cells[n-1] = d[n-1]
	for i := n - 2; i >= 0; i-- {
		b.cells[i] = d[i] - c[i]*b.cells[i+1]
	}
	b.elapsed += dt
}

// Run burns an arc of power watts for so many seconds. It returns the time, s, at which the heated length
// passed limit, C, or NaN if it did not.
func (b *Bar) Run(seconds, power, limit float64) float64 {
	passed := math.NaN()
	const steps = 200
	for i := range steps {
		before := b.Mean()
		b.step(seconds/steps, power)
		if now := b.Mean(); math.IsNaN(passed) && before <= limit && now > limit {
			passed = seconds / steps * (float64(i) + (limit-before)/(now-before))
		}
	}
	return passed
}

// LongestHold is the longest cooling time that is computed, s.
const LongestHold = 6 * 3600

// Hold lets the bar cool without an arc until its heated length is down to limit, C, and returns the time, s: 0
// if it is there already. It returns ErrRange if that takes over six hours, for example if the air is not
// colder than limit.
func (b *Bar) Hold(limit float64) (float64, error) {
	start := b.elapsed
	for b.elapsed-start < LongestHold {
		before, t := b.Mean(), b.elapsed-start
		if before <= limit {
			return t, nil
		}
		dt := max(0.01, 0.01*t)
		b.step(dt, 0)
		if now := b.Mean(); now <= limit {
			return t + dt*(before-limit)/(before-now), nil
		}
	}
	return LongestHold, Outside("hold", LongestHold, "the part does not cool to the limit in six hours")
}
