package calc

import (
	"math"
	"strconv"

	"brazebooth/tables"
)

// aim points the arc, where the job leaves that open, at the joint or toward the member that carries more heat away.
// The more unequal the two are, the further: members that are nearly equal hardly move it, and half of the whole way is
// reached at the ratio from which a welder aims off.
func (r *resolution) aim() error {
	u, m := &r.used, &r.card.Setup.Members
	if u.Aim.Set {
		return nil
	}
	off, why := 0.0, ""
	switch {
	case r.card.Setup.One || u.Joint == "plug":
	case !AimKnown(m):
		why = "at the joint's line: where to aim between these two metals is not judged; try both sides on scrap"
	default:
		off = aimOff(u.Joint, carries(&m[0]), carries(&m[1]))
		if math.Abs(off) >= LeastAim {
			why = aimWhy(m)
		}
	}
	u.Aim = Some(off)
	if why != "" {
		r.assume("aim", strconv.FormatFloat(off, 'f', 1, 64)+"mm", why)
	}
	return nil
}

// LeastAim is the aim, mm, from which a welder is told of it.
const LeastAim = 0.1

// carries is how much heat a member carries away, by its thickness and its thermal effusivity: what two plates that
// meet at a line source share its heat by.
func carries(m *Member) float64 {
	return Draws(m.Core, m.Metal.Conductivity.V, m.Metal.HeatCapacity.V)
}

// AimKnown reports whether the aim between two members follows from the heat that they carry away. It does for two
// members of one metal, and for steels and irons beside each other. Copper and its alloys carry more heat away and also
// melt sooner: the heat asks for an arc on them, their melting for one beside them. The chances by the cross-section
// favour the second by far, but no test on such a pair supports them.
func AimKnown(m *[2]Member) bool {
	ferrous := func(f tables.Family) bool {
		return f == tables.Steel || f == tables.Stainless || f == tables.CastIron
	}
	a, b := &m[0].Metal, &m[1].Metal
	return a.ID == b.ID || ferrous(a.Family) && ferrous(b.Family)
}

// aimWhy says why the arc points off the joint.
func aimWhy(m *[2]Member) string {
	if m[0].Metal.ID == m[1].Metal.ID {
		return "toward the thicker member"
	}
	to := &m[0]
	if carries(&m[1]) > carries(to) {
		to = &m[1]
	}
	return "toward the " + to.Metal.Name + ", which carries more heat away"
}

// aimOff is how far toward the second member the arc points, mm, by the heat that each carries away. The upper member
// of a lap is its edge, which melts away where the arc comes nearer: the arc stays at the joint, however thick the
// upper sheet is.
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
