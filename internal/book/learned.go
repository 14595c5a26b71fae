package book

import (
	"context"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// ReadingOf is a reading with what keeps it.
type ReadingOf struct {
	Revision Revision
	Reading  Reading
	Flagged  bool // beyond what the others predict, and not confirmed
}

// Readings are those of a power source that stand, oldest first; "" for all power sources.
func Readings(ctx context.Context, b Book, source string) ([]ReadingOf, error) {
	var list []ReadingOf
	for offset := 0; ; offset += 500 {
		heads, err := b.List(ctx, Query{Kind: ReadingKind, Limit: 500, Offset: offset})
		if err != nil {
			return nil, err
		}
		for _, h := range heads {
			r, err := b.Get(ctx, h.ID)
			if err != nil {
				return nil, err
			}
			d, err := Body[Reading](&r)
			if err != nil {
				return nil, err
			}
			d.Clean()
			if source == "" || strings.EqualFold(d.Source, source) {
				list = append(list, ReadingOf{Revision: r, Reading: d})
			}
		}
		if len(heads) < 500 {
			break
		}
	}
	for i, j := 0, len(list)-1; i < j; i, j = i+1, j-1 {
		list[i], list[j] = list[j], list[i]
	}
	return list, nil
}

// Learn is what a power source's readings with one filler, wire and mode teach; it marks those that are flagged.
func Learn(list []ReadingOf, filler string, wire float64, mode string) (calc.Learned, error) {
	f, ok := tables.FillerByID(filler)
	if !ok {
		return calc.Learned{}, ErrNone
	}
	var taken []calc.Reading
	var at []int
	for i := range list {
		r := &list[i].Reading
		if r.Filler == filler && math.Abs(r.Wire-wire) < 0.01 && r.Mode == mode {
			taken = append(taken, calc.Reading{Feed: r.Feed, StickOut: r.StickOut, Amps: r.Amps, Volts: r.Volts, Confirmed: r.Confirmed})
			at = append(at, i)
		}
	}
	l, err := calc.Learn(&f, wire, mode, taken)
	for _, flagged := range [...][]int{l.Phi.Flagged, l.Volts.Flagged} {
		for _, i := range flagged {
			list[at[i]].Flagged = true
		}
	}
	return l, err
}
