package formula

// BeadArea returns the section of metal laid, mm2: what the wire brings, less what is lost, over the travel. d wire
// mm; feed mm/s (times the arc-on share); deposit the deposition efficiency; travel mm/s.
func BeadArea(d, feed, deposit, travel float64) (float64, error) {
	if err := Positive([4]string{"wire diameter", "feed", "deposition efficiency", "travel"}, d, feed, deposit, travel); err != nil {
		return 0, err
	}
	return WireArea(d) * feed * deposit / travel, nil
}
