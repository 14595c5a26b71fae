package correct

import (
	"math"
	"slices"
	"strings"

	"brazebooth/calc/learned"
	"brazebooth/tables"
)

// notches are the values that can be set on one side of the present one: up to the largest step, inside the
// lever's ends, and before a value that already showed the opposite. If that value is near, only up to halfway.
func (v *posterior) notches(t *Try, l *lever, sign float64) []float64 {
	at := l.opt(&t.Job)
	if !at.Set || sign == 0 || v.barred(t, l, sign) {
		return nil
	}
	low, high := l.ends(&t.Job)
	if l.what == "volts" {
		low, high = v.steadyVolts(t, low, high)
	}
	stop, bracketed := v.opposite(t, l, sign)
	var list []float64
	from := math.Round(at.V/l.quantum) * l.quantum
	for n := 1; n <= 400; n++ {
		x := from + sign*float64(n)*l.quantum
		past := sign > 0 && x > high+1e-9 || sign < 0 && x < low-1e-9 // returning from outside is allowed
		if math.Abs(x-at.V) > l.most(at.V)+1e-9 || past || bracketed && sign*(x-stop) >= -1e-9 {
			break
		}
		if sign*(x-at.V) > l.least() {
			list = append(list, math.Round(x*1000)/1000)
		}
	}
	if bracketed && len(list) > 2 && math.Abs(stop-at.V) <= l.most(at.V)+1e-9 {
		return list[:(len(list)+1)/2] // at most halfway to the value that showed the opposite
	}
	return list
}

// least is the smallest change that is worth a bead: half the quantum, or for a time nearly all of it.
func (l *lever) least() float64 {
	if l.unit == "s" {
		return 0.95 * l.quantum
	}
	return l.quantum / 2
}

// opposite is the nearest value of a lever on that side at which a bead with the same other settings showed the
// opposite.
func (v *posterior) opposite(t *Try, l *lever, sign float64) (float64, bool) {
	return v.nearest(t, l, sign, func(seen string) bool { return learned.HeatSign(seen)*learned.HeatSign(t.Seen) < 0 })
}

// nearest is the nearest value of a lever on that side at which a bead with the same other settings had such a
// look.
func (v *posterior) nearest(t *Try, l *lever, sign float64, showed func(seen string) bool) (value float64, found bool) {
	at := l.opt(&t.Job).V
	for _, other := range v.laid[:len(v.laid)-1] {
		j := other.Job
		x := l.opt(&j).V
		*l.opt(&j) = *l.opt(&t.Job)
		if j != t.Job || sign*(x-at) <= 0 || !showed(other.Seen) {
			continue
		}
		if !found || sign*(x-value) < 0 {
			value, found = x, true
		}
	}
	return value, found
}

// steadyVolts narrows the range of the volts to between those at which a bead with this feed stubbed and those
// at which the wire burnt back.
func (v *posterior) steadyVolts(t *Try, low, high float64) (float64, float64) {
	const clear = 0.2 // V, the distance to keep from a value that failed
	for _, other := range v.laid {
		if other.Job.Feed != t.Job.Feed || other.Job.StickOut != t.Job.StickOut {
			continue
		}
		switch at := other.Job.Volts.V; voltSign(other.Seen) {
		case -1:
			low = max(low, at+clear)
		case 1:
			high = min(high, at-clear)
		}
	}
	return low, high
}

// voltSign is −1 for a bead that shows too few volts for its feed, 1 for too many, 0 for neither or both.
func voltSign(seen string) int {
	sum := 0
	for _, s := range strings.Split(seen, ",") {
		const telling = 0.5
		if tables.ShareSeen(s, tables.CauseVoltsLow) >= telling {
			sum--
		}
		if tables.ShareSeen(s, tables.CauseVoltsHi) >= telling {
			sum++
		}
	}
	return sum
}

// contradicts reports whether a bead looks cold and hot at once.
func contradicts(seen string) bool {
	looks := func(heat float64) bool {
		return slices.ContainsFunc(strings.Split(seen, ","), func(s string) bool { return learned.HeatSign(s) == heat })
	}
	return looks(-1) && looks(1)
}
