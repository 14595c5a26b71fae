package formula

// The ends of the range of the cooling time, C.
const coolsFrom, coolsTo = 800, 500

// CoolingTime returns the time from 800 to 500 C, s, by EN 1011-2 Annex D: the larger of the three- and the
// two-dimensional time. net J/mm; t sheet mm; t0 start C, under 500; joint an id of tables. For unalloyed and
// low-alloy ferritic steels only.
func CoolingTime(net, t, t0 float64, joint string) (float64, error) {
	if err := Positive([7]string{"net heat", "thickness"}, net, t); err != nil {
		return 0, err
	}
	if !(t0 < coolsTo) {
		return 0, Outside("start temperature", t0, "must be under 500 C")
	}
	f2, f3 := JointFactors(joint)
	plane, space := CoolingForms(net, t, t0)
	return max(space*f3, plane*f2), nil
}

// CoolingForms are the two- and the three-dimensional time, s, before the joint's factor.
func CoolingForms(net, t, t0 float64) (plane, space float64) {
	q := net / 1000 // kJ/mm
	five, eight := 1/(coolsTo-t0), 1/(coolsFrom-t0)
	space = (6700 - 5*t0) * q * (five - eight)
	plane = (4300 - 4.3*t0) * 1e5 * q * q / (t * t) * (five*five - eight*eight)
	return plane, space
}

// JointFactors are F2 and F3 of EN 1011-2 Annex D, Table D.1.
func JointFactors(joint string) (f2, f3 float64) {
	switch joint {
	case "butt":
		return 0.9, 0.9
	case "corner":
		return 0.9, 0.67
	case "lap", "tee":
		return 0.45, 0.67
	}
	return 1, 1 // a bead on sheet
}
