package formula

// ArcEnergy returns U·I/v, J/mm, for volts V, amps A (the mean, the arc-on share included) and travel mm/s. ASME and
// AWS call this heat input, in kJ/in. Published figures for arc brazing differ by 25 % because authors do not say
// which of three heats they mean: this one; this one times a convention's 0.8, for reports; or this one times the
// measured efficiency, which is what reaches the work. A card has all three.
func ArcEnergy(volts, amps, travel float64) (float64, error) {
	if err := Positive([4]string{"voltage", "current", "travel"}, volts, amps, travel); err != nil {
		return 0, err
	}
	return volts * amps / travel, nil
}
