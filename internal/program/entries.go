package program

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/tui"
)

// entriesOf are rows for a list, the newest first; one that is called exactly what was typed goes before the others.
func entriesOf(ctx context.Context, b book.Book, heads []book.Head, text string) []tui.Entry {
	exact := func(h book.Head) int {
		if strings.EqualFold(h.Name, strings.TrimSpace(text)) {
			return 0
		}
		return 1
	}
	if strings.TrimSpace(text) != "" {
		slices.SortStableFunc(heads, func(a, b book.Head) int { return cmp.Compare(exact(a), exact(b)) })
	}
	list := make([]tui.Entry, len(heads))
	for i, h := range heads {
		list[i] = tui.Entry{ID: h.ID, Kind: string(h.Kind), Name: plain.Line(h.Name, 60), At: h.At[:10], Line: plain.Line(h.Line, 100)}
	}
	tellApart(ctx, b, heads, list)
	return list
}

// tellApart gives rows of one kind, name and day what differs: the time of day, down to the second where that is needed, and of
// a card its wire feed and travel.
func tellApart(ctx context.Context, b book.Book, heads []book.Head, list []tui.Entry) {
	alike := map[tui.Entry][]int{}
	for i, e := range list {
		key := tui.Entry{Kind: e.Kind, Name: strings.ToLower(e.Name), At: e.At}
		alike[key] = append(alike[key], i)
	}
	for _, rows := range alike {
		if len(rows) < 2 {
			continue
		}
		until := 16 // 2026-03-01T11:04
		if sameTime(heads, rows, until) {
			until = 19
		}
		for _, i := range rows {
			list[i].At = strings.Replace(heads[i].At[:until], "T", " ", 1)
			list[i].Line = strings.TrimPrefix(setAs(ctx, b, &heads[i])+", "+list[i].Line, ", ")
		}
	}
}

// sameTime reports two rows whose times are the same so far.
func sameTime(heads []book.Head, rows []int, until int) bool {
	seen := map[string]bool{}
	for _, i := range rows {
		at := heads[i].At[:until]
		if seen[at] {
			return true
		}
		seen[at] = true
	}
	return false
}

// setAs is how a kept card sets the machine and the hand, "" of any other record.
func setAs(ctx context.Context, b book.Book, h *book.Head) string {
	if h.Kind != book.CardKind {
		return ""
	}
	r, err := b.Get(ctx, h.ID)
	if err != nil {
		return ""
	}
	c, err := book.Body[book.Card](&r)
	if err != nil || !c.Card.Used.Feed.Set || !c.Card.Used.Travel.Set {
		return ""
	}
	return fmt.Sprintf("%.2f m/min at %.1f mm/s", c.Card.Used.Feed.V, c.Card.Used.Travel.V)
}
