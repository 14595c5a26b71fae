package calc

import "math"

// How many times the value, as logarithms, the high end of a logarithmic interval may be before differences begin to
// replace it, and before they have replaced it: assumed. Inputs that each multiply a width near zero by ten do not
// multiply it by a hundred together, since each adds what wets.
var differencesFrom, differencesAlone = math.Log(3), math.Log(6)

// highEnd is the high end of a positive reading whose effects upward join to up, a logarithm.
func (l *sectionList) highEnd(r *reading, v, up float64, more []effect) float64 {
	byLogs := v * math.Exp(up)
	if up <= differencesFrom {
		return byLogs
	}
	summed := min(byLogs, l.summed(r, v, more))
	if up >= differencesAlone { // byLogs is infinite where the cold end is dry and the model does not reach the hot end
		return summed
	}
	share := (up - differencesFrom) / (differencesAlone - differencesFrom)
	return byLogs + share*(summed-byLogs)
}

// summed is the high end of a reading whose effects join as differences; more are logarithmic effects of others.
func (l *sectionList) summed(r *reading, v float64, more []effect) float64 {
	apart := reading{of: r.of, difference: true}
	effects := l.effects(&apart)
	for _, x := range more {
		effects = append(effects, effect{x.of, v * math.Expm1(x.low), v * math.Expm1(x.high)})
	}
	_, up := join(effects)
	return v + up
}
