package formula

import "math"

// Steel is the composition of a ferritic steel, % by mass.
type Steel struct{ C, Si, Mn, Cr, Mo, Ni, Cu, V, Nb, B float64 }

// CEV is the carbon equivalent of the International Institute of Welding, %: EN 10025, ISO/TR 17844 (memory high).
func (s Steel) CEV() float64 { return s.C + s.Mn/6 + (s.Cr+s.Mo+s.V)/5 + (s.Ni+s.Cu)/15 }

// CET is the carbon equivalent of EN 1011-2 Annex C.3, method B, % (memory high).
func (s Steel) CET() float64 { return s.C + (s.Mn+s.Mo)/10 + (s.Cr+s.Cu)/20 + s.Ni/40 }

// Pcm is the carbon equivalent of Ito and Bessyo 1968 for low-carbon steel, %; ISO/TR 17844 (memory high).
func (s Steel) Pcm() float64 {
	return s.C + s.Si/30 + (s.Mn+s.Cu+s.Cr)/20 + s.Ni/60 + s.Mo/15 + s.V/10 + 5*s.B
}

// usable returns an error if a composition or a cooling time is outside the range to which the hardness
// formulas were fitted: C 0.02 to 0.30 %, Mn to 3 %, t8/5 from 0.1 to 1000 s.
func (s Steel) usable(t85 float64) error {
	switch {
	case !(s.C >= 0.02 && s.C <= 0.30):
		return Outside("carbon", s.C, "the hardness formulas hold from 0.02 to 0.30 %")
	case !(s.Mn >= 0 && s.Mn <= 3):
		return Outside("manganese", s.Mn, "the hardness formulas hold up to 3 %")
	case !(s.Si >= 0 && s.Cr >= 0 && s.Mo >= 0 && s.Ni >= 0 && s.Cu >= 0 && s.V >= 0 && s.Nb >= 0 && s.B >= 0):
		return Outside("an element", math.NaN(), "no share of an element is below zero")
	case !(t85 >= 0.1 && t85 <= 1000):
		return Outside("t8/5", t85, "the hardness formulas hold from 0.1 to 1000 s")
	}
	return nil
}

// HardnessYurioka is the largest hardness of a zone that was austenite and cooled from 800 to 500 C in t85 s,
// HV: Yurioka, Okumura, Kasuya and Cotton, Metal Construction 19 (1987) 217R (memory medium), without its terms
// for boron. It mixes the hardness of martensite and bainite by an arctangent of the cooling time; stated
// scatter about 30 HV.
func HardnessYurioka(s Steel, t85 float64) (float64, error) {
	if err := s.usable(t85); err != nil {
		return 0, err
	}
	one := s.C + s.Si/24 + s.Mn/6 + s.Cu/15 + s.Ni/12 + s.Cr*(1-0.16*math.Sqrt(s.Cr))/8 + s.Mo/4
	two := s.C + s.Si/24 + s.Mn/5 + s.Cu/10 + s.Ni/18 + s.Cr/5 + s.Mo/2.5 + s.V/5 + s.Nb/3
	three := s.C + s.Mn/3.6 + s.Cu/20 + s.Ni/9 + s.Cr/5 + s.Mo/4
	martensite, bainite := 884*s.C*(1-0.3*s.C*s.C)+294, 145+130*math.Tanh(2.65*two-0.69)
	tm, tb := math.Exp(10.6*one-4.8), math.Exp(6.2*three+0.74)
	x := 4*math.Log(t85/tm)/math.Log(tb/tm) - 2
	return (martensite+bainite)/2 - (martensite-bainite)/2.2*math.Atan(x), nil
}

// HardnessDuren is the same hardness by Düren 1985 (memory medium): 802 C + 305 for martensite only, 350 CE +
// 101 without martensite, and between them logarithmic in t85. CE = C + Si/11 + Mn/8 + Cu/9 + Cr/5 + Ni/17 +
// Mo/6 + V/3.
func HardnessDuren(s Steel, t85 float64) (float64, error) {
	if err := s.usable(t85); err != nil {
		return 0, err
	}
	ce := s.C + s.Si/11 + s.Mn/8 + s.Cu/9 + s.Cr/5 + s.Ni/17 + s.Mo/6 + s.V/3
	l := math.Log10(t85)
	mixed := 2019*(s.C*(1-0.5*l)+0.3*(ce-s.C)) + 66*(1-0.8*l)
	return max(350*ce+101, min(802*s.C+305, mixed)), nil
}

// HardnessMartensite is the hardness of a fully martensitic zone, HV, by Yurioka's term.
func HardnessMartensite(s Steel) (float64, error) {
	if err := s.usable(1); err != nil {
		return 0, err
	}
	return 884*s.C*(1-0.3*s.C*s.C) + 294, nil
}
