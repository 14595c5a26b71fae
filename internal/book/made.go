package book

import "bytes"

// made is what is known of a revision because this process made it: that it was checked with this hash, and for a
// card its line in lists, so that saving need not read the body again.
type made struct {
	rev      string
	isListed bool
	listing
}

// listing is a record's line in lists and the words that find it.
type listing struct {
	name, line string
	words      []string
}

// list notes a card's line in lists. For text that is not UTF-8 it notes nothing: the body's JSON has U+FFFD in its
// place, so only the body tells what will be read.
func (m *made) list(body any, packed []byte) {
	c, ok := body.(Card)
	if !ok || bytes.Contains(packed, []byte(`\ufffd`)) {
		return
	}
	m.isListed, m.listing = true, listingOf(c.listed().summary())
}

func listingOf(name, line, text string) listing { return listing{name, line, words(text)} }

// listing is a revision's line in lists, whoever made it.
func (r *Revision) listing() listing {
	if r.made != nil && r.made.isListed && r.made.rev == r.Rev {
		return r.made.listing
	}
	return listingOf(summary(r))
}
