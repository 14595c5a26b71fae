package formula

import (
	"math"

	"brazebooth/tables"
)

// CurrentFromFeed returns the direct current, gun positive, that melts a wire: the root of the energy balance
// I·φ + I²·R = A·v·ρ·H, with R = ρ_e·L/A. It has the same structure as the melting-rate equation of Lesnewich
// (1958), v = αI + βLI².
//
// d wire diameter mm; feed mm/s; rho g/cm3; hLiq J/g from 20 C to fully liquid and phi V, which belong
// together; rhoE resistivity averaged over the extension, ohm mm; stick extension from contact tip to arc, mm
// (0: no preheating). Result A. Valid below and above the spray transition; ErrRange for a number that is not
// positive.
func CurrentFromFeed(d, feed, rho, hLiq, rhoE, phi, stick float64) (float64, error) {
	if err := wireInputs(d, rho, hLiq, phi, rhoE, stick); err != nil {
		return 0, err
	}
	if !(feed > 0) || math.IsInf(feed, 1) {
		return 0, Outside("feed", feed, "must be above zero")
	}
	power := WireArea(d) * feed * rho * 1e-3 * hLiq // W
	r := rhoE * stick / WireArea(d)                 // ohm
	// The root in a form that loses no digits as r goes to zero.
	return 2 * power / (phi + math.Sqrt(phi*phi+4*r*power)), nil
}

// FeedFromCurrent is the inverse: the feed in mm/s that amps melt. Arguments as CurrentFromFeed.
func FeedFromCurrent(d, amps, rho, hLiq, rhoE, phi, stick float64) (float64, error) {
	if err := wireInputs(d, rho, hLiq, phi, rhoE, stick); err != nil {
		return 0, err
	}
	if !(amps > 0) || math.IsInf(amps, 1) {
		return 0, Outside("current", amps, "must be above zero")
	}
	r := rhoE * stick / WireArea(d)
	return (amps*phi + amps*amps*r) / (WireArea(d) * rho * 1e-3 * hLiq), nil
}

func wireInputs(d, rho, hLiq, phi, rhoE, stick float64) error {
	if err := Positive([7]string{"wire diameter", "density", "heat to melt", "calibration voltage"}, d, rho, hLiq,
		phi); err != nil {
		return err
	}
	if !(rhoE >= 0) || !(stick >= 0) || math.IsInf(rhoE+stick, 1) {
		return Outside("resistivity or stick-out", min(rhoE, stick), "must be zero or more")
	}
	return nil
}

// LoadLine returns the conventional load voltage of a power source at a current, V: 14 + 0.05·I, 44 V from 600
// A, by IEC 60974-1. It is for rating power sources; real arcs do not follow it.
func LoadLine(amps float64) float64 {
	return min(tables.LoadLineBase.V+tables.LoadLineSlope.V*amps, tables.LoadLineCap.V)
}

// ArcEnergy returns U·I/v, J/mm, for volts V, amps A (the mean, including the arc-on share) and travel mm/s.
// ASME and AWS call this heat input, in kJ/in. Published figures for arc brazing differ by 25 % because authors
// do not say which of three heats they mean: this one; this one times a conventional 0.8, for reports; or this
// one times the measured efficiency, which is the heat that reaches the work. A card has all three.
func ArcEnergy(volts, amps, travel float64) (float64, error) {
	if err := Positive([7]string{"voltage", "current", "travel"}, volts, amps, travel); err != nil {
		return 0, err
	}
	return volts * amps / travel, nil
}

// DutyAt returns the duty in per cent at a current in A, from a power source's rating plate (IEC 60974-1): its
// heating goes with the square of the current. It is at most 100 %.
func DutyAt(amps, ratedAmps, ratedDuty float64) (float64, error) {
	if err := Positive([7]string{"current", "rated current", "rated duty"}, amps, ratedAmps, ratedDuty); err != nil {
		return 0, err
	}
	r := ratedAmps / amps
	return min(100, ratedDuty*r*r), nil
}

// EffectiveAmps returns the root-mean-square current, A, of an arc that runs for the share duty of the time.
func EffectiveAmps(amps, duty float64) (float64, error) {
	if !(duty >= 0 && duty <= 1) {
		return 0, Outside("duty", duty, "from 0 to 1")
	}
	return amps * math.Sqrt(duty), nil
}
