package book

import "bytes"

// made is what is known of a revision since this process made it: that it was looked at with this hash, and where it
// is a card's what a list shows of it, so that saving need not read it out of the body again.
type made struct {
	rev      string
	isListed bool
	listing
}

// listing is what a list shows of a record and what it is found by.
type listing struct {
	name, line string
	words      []string
}

// list notes what a list shows of a body, if it is a card's. Text that is no UTF-8 is not what its JSON holds, which
// says U+FFFD in its place: of that the body alone tells.
func (m *made) list(body any, packed []byte) {
	c, ok := body.(Card)
	if !ok || bytes.Contains(packed, []byte(`\ufffd`)) {
		return
	}
	m.isListed, m.listing = true, listingOf(c.listed().summary())
}

func listingOf(name, line, text string) listing { return listing{name, line, words(text)} }

// listing is what a list shows of a revision, whoever made it.
func (r *Revision) listing() listing {
	if r.made != nil && r.made.isListed && r.made.rev == r.Rev {
		return r.made.listing
	}
	return listingOf(summary(r))
}
