package calc

import (
	"math"
	"strconv"

	"brazebooth/tables"
)

// aim points the arc, where the job leaves that open, at the joint or toward the thicker of two unequal members, the
// more the more unequal they are. Nearly equal ones hardly move it: half of the whole way belongs to the ratio from
// which a welder aims off.
func (r *resolution) aim() error {
	u, m := &r.used, &r.card.Setup.Members
	if u.Aim.Set {
		return nil
	}
	off := 0.0
	if !r.card.Setup.One {
		off = aimOff(u.Joint, m[0].Core, m[1].Core)
	}
	u.Aim = Some(off)
	if math.Abs(off) >= leastAim {
		r.assume("aim", strconv.FormatFloat(off, 'f', 1, 64)+"mm", "toward the thicker member")
	}
	return nil
}

// leastAim is the aim, mm, from which a welder is told of it.
const leastAim = 0.1

// aimOff is how far toward the second member the arc points, mm, given both thicknesses, mm. A lap's upper member is
// its edge, which melts away where the arc comes nearer: however thick it is, the arc stays at the joint.
func aimOff(joint string, first, second float64) float64 {
	most := tables.AimOff.V
	x := math.Log(second/first) / math.Log(tables.UnequalFrom.V)
	switch {
	case joint == "lap" && x < 0, joint == "plug":
		return 0
	case joint != "lap":
		most *= tables.AimShare.V
	}
	return math.Copysign(most*x*x/(1+x*x), x)
}
