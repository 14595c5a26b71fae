package learned

import (
	"slices"
	"strings"

	"brazebooth/tables"
)

// HeatOf is the heat that a bead's look and verdict suggest: "cold", "good" or "hot"; "" if they suggest none.
func HeatOf(seen, verdict string) string {
	if verdict == "good" {
		return "good"
	}
	if seen == "" {
		return ""
	}
	switch HeatSign(WithoutZinc(seen)) { // it is not known here whether the loss of zinc was expected
	case -1:
		return "cold"
	case 1:
		return "hot"
	}
	return ""
}

// HeatSign is −1 for a bead that looks cold, 1 for a hot one, 0 for neither or both. seen are ids of tables.Sights with
// commas.
func HeatSign(seen string) float64 {
	sum := 0.0
	for _, s := range strings.Split(seen, ",") {
		cold := max(tables.ShareSeen(s, tables.CauseCold), tables.ShareSeen(s, tables.CauseOnShort),
			tables.ShareSeen(s, tables.CauseOffLong))
		hot := max(tables.ShareSeen(s, tables.CauseHot), tables.ShareSeen(s, tables.CauseMelts),
			tables.ShareSeen(s, tables.CauseOnLong), tables.ShareSeen(s, tables.CauseOffShort))
		const telling = 0.3 // a sight that is rare with both says nothing
		switch {
		case hot >= telling && hot > 3*cold:
			sum++
		case cold >= telling && cold > 3*hot:
			sum--
		}
	}
	return max(-1, min(1, sum))
}

// WithoutZinc removes ZincBehind from a list of sights.
func WithoutZinc(seen string) string {
	list := slices.DeleteFunc(strings.Split(seen, ","), func(s string) bool { return s == ZincBehind })
	return strings.Join(list, ",")
}

// ZincBehind is the observation that zinc is gone on the face away from the bead.
const ZincBehind = "zinc-gone-behind"
