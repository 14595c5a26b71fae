package canvas

import (
	"math"
	"strconv"
	"testing"
)

// rgb is a colour as it is sent to a screen, each part from 0 to 255.
type rgb [3]float64

func hexColour(t *testing.T, s string) rgb {
	t.Helper()
	n, err := strconv.ParseUint(s[1:], 16, 32)
	if err != nil || len(s) != 7 {
		t.Fatalf("%q is no colour", s)
	}
	return rgb{float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)}
}

// indexed is a colour of the 256-colour palette, from 16 up: a cube of six steps a side, then 24 greys. From memory of
// xterm's palette, confidence high.
func indexed(t *testing.T, s string) rgb {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil || n < 16 || n > 255 {
		t.Fatalf("%q is not one of the 240 fixed colours", s)
	}
	if n >= 232 {
		v := float64(8 + 10*(n-232))
		return rgb{v, v, v}
	}
	n -= 16
	step := func(n int) float64 {
		if n == 0 {
			return 0
		}
		return float64(55 + 40*n)
	}
	return rgb{step(n / 36), step(n / 6 % 6), step(n % 6)}
}

// linear removes the gamma of sRGB: IEC 61966-2-1.
func (c rgb) linear() [3]float64 {
	var out [3]float64
	for i, v := range c {
		v /= 255
		if v <= 0.04045 {
			out[i] = v / 12.92
		} else {
			out[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return out
}

// contrast is the ratio of WCAG 2.1, "contrast ratio" and "relative luminance".
func contrast(a, b rgb) float64 {
	light := func(c rgb) float64 {
		l := c.linear()
		return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2]
	}
	x, y := light(a), light(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// vision converts a linear colour to what an eye sees of it. The three deficiencies: Machado, Oliveira and Fernandes,
// "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15 (2009), severity 1.0; from
// memory, confidence high. Each row adds up to 1 as it must.
var vision = map[string][3][3]float64{
	"normal":       {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// seen is a colour as an eye sees it, in CIE L*a*b* under D65.
func seen(c rgb, m [3][3]float64) [3]float64 {
	l := c.linear()
	var left [3]float64
	for i := range left {
		left[i] = math.Min(1, math.Max(0, m[i][0]*l[0]+m[i][1]*l[1]+m[i][2]*l[2]))
	}
	x := (0.4124564*left[0] + 0.3575761*left[1] + 0.1804375*left[2]) / 0.95047
	y := 0.2126729*left[0] + 0.7151522*left[1] + 0.0721750*left[2]
	z := (0.0193339*left[0] + 0.1191920*left[1] + 0.9503041*left[2]) / 1.08883
	f := func(v float64) float64 {
		if v > 216.0/24389 {
			return math.Cbrt(v)
		}
		return (24389.0/27*v + 16) / 116
	}
	return [3]float64{116*f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))}
}

// deltaE is CIEDE2000 of two colours in L*a*b*: ISO/CIE 11664-6.
func deltaE(p, q [3]float64) float64 {
	rad := func(deg float64) float64 { return deg * math.Pi / 180 }
	deg := func(y, x float64) float64 { return math.Mod(math.Atan2(y, x)*180/math.Pi+360, 360) }
	g7 := func(c float64) float64 { return math.Sqrt(math.Pow(c, 7) / (math.Pow(c, 7) + math.Pow(25, 7))) }
	g := 1.5 - 0.5*g7((math.Hypot(p[1], p[2])+math.Hypot(q[1], q[2]))/2)
	c1, c2 := math.Hypot(p[1]*g, p[2]), math.Hypot(q[1]*g, q[2])
	h1, h2 := deg(p[2], p[1]*g), deg(q[2], q[1]*g)
	turn, mean := h2-h1, (h1+h2)/2
	switch {
	case c1*c2 == 0:
		turn, mean = 0, h1+h2
	case math.Abs(turn) > 180:
		turn -= math.Copysign(360, turn)
		mean = math.Mod(mean+180, 360)
	}
	l, c := (p[0]+q[0])/2, (c1+c2)/2
	t := 1 - 0.17*math.Cos(rad(mean-30)) + 0.24*math.Cos(rad(2*mean)) +
		0.32*math.Cos(rad(3*mean+6)) - 0.20*math.Cos(rad(4*mean-63))
	dl := (q[0] - p[0]) / (1 + 0.015*(l-50)*(l-50)/math.Sqrt(20+(l-50)*(l-50)))
	dc := (c2 - c1) / (1 + 0.045*c)
	dh := 2 * math.Sqrt(c1*c2) * math.Sin(rad(turn/2)) / (1 + 0.015*c*t)
	rot := -2 * g7(c) * math.Sin(rad(60*math.Exp(-math.Pow((mean-275)/25, 2))))
	return math.Sqrt(dl*dl + dc*dc + dh*dh + rot*dc*dh)
}

// The measures of colours against a pair of the test data that Sharma, Wu and Dalal printed with CIEDE2000 (Color
// Research and Application 30, 2005), and against known results: black on white is 21 to 1, and white stays white for
// any eye. From memory, confidence high.
func TestColourMeasures(t *testing.T) {
	if got := deltaE([3]float64{50, 2.6772, -79.7751}, [3]float64{50, 0, -82.7485}); math.Abs(got-2.0425) > 5e-5 {
		t.Errorf("the pair is %.4f apart, want 2.0425", got)
	}
	black, white := rgb{}, rgb{255, 255, 255}
	if got := contrast(black, white); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white is %g to 1", got)
	}
	for name, m := range vision {
		if got := seen(white, m); math.Abs(got[0]-100) > 0.01 || math.Hypot(got[1], got[2]) > 0.05 {
			t.Errorf("%s sees white as %v", name, got)
		}
	}
}
