package calc

import "math"

// unequalFrom is the ratio of thickness from which a hand aims at the thicker member.
const unequalFrom = 1.25

// chooseAim points the arc where nobody said where: at the joint, or, for unequal sheets, so far toward the
// thicker one as leaves the larger of the two thermal margins, tried in the middle of the settings.
func (b *board) chooseAim(card *Card) {
	u := &card.Used
	members := card.Setup.members()
	if u.Aim.Set {
		return
	}
	u.Aim = Some(0)
	if len(members) < 2 || b.notModelled(card) != "" {
		return
	}
	toward := 1.0
	thin, thick := members[0].Core, members[1].Core
	if thin > thick {
		thin, thick, toward = thick, thin, -1
	}
	if thick < unequalFrom*thin {
		return
	}
	m := newMargins(b, card)
	low, high := b.steadyFeeds(&m)
	feed, travel := math.Sqrt(low*high), math.Sqrt(m.slow*m.fast)
	if u.Feed.Set || b.chain.ampsGiven {
		feed = b.knobs[kFeed]
	}
	if u.Travel.Set {
		travel = b.knobs[kTravel]
	}
	best := math.Inf(-1)
	for _, off := range [...]float64{0, 0.5, 1} {
		h := b.heatField(card)
		h.in.Aim = toward * off
		s, err := h.at(feed, travel, false)
		if err != nil {
			continue
		}
		if l := m.logs(&s); min(l[lWets], l[lSolid]) > best {
			best = min(l[lWets], l[lSolid])
			u.Aim = Some(toward * off)
		}
	}
	if u.Aim.V != 0 {
		card.Assumed = append(card.Assumed, Assumption{"aim", number(math.Abs(u.Aim.V)) + "mm", "toward the thicker member"})
	}
}
