package cli

import (
	"strings"
	"testing"

	"brazebooth/internal/plain"
	"brazebooth/internal/shop"
)

// No line of a list is wider than allowed or cut within a word, and a wide terminal shows all of it.
func TestListingFitsItsColumns(t *testing.T) {
	line := "galvanized 18ga lap cusi3 0.889mm dip, good: even colour, no spatter, toes run out smoothly"
	entries := func() []shop.Entry {
		return []shop.Entry{
			{ID: "fa821379d5c67f4f", Kind: "card", Name: "tank lid", At: "2026-11-28", Line: line},
			{ID: "42c5e1d65a05cc5e", Kind: "trial", Name: "planter corner, the long one with a rim", At: "2026-11-28",
				Line: "deleted, " + line},
			{ID: "42c5e1d65a05cc5f", Kind: "person", Name: "水槽の蓋", At: "2026-11-28"},
		}
	}
	for columns := 80; columns <= 200; columns++ {
		for i, l := range strings.Split(strings.TrimSuffix(listing(entries(), columns), "\n"), "\n") {
			if plain.Width(l) > columns {
				t.Fatalf("%d columns: %d are taken: %s", columns, plain.Width(l), l)
			}
			said, more := strings.CutSuffix(l, " …")
			for _, name := range []string{"tank lid", "…", "水槽の蓋"} { // the text follows the name
				if _, behind, ok := strings.Cut(said, name+" "); ok {
					said = strings.TrimSpace(behind)
					break
				}
			}
			bare := strings.NewReplacer(",", "", ":", "").Replace
			if more && !strings.HasPrefix(bare(entries()[i].Line)+" ", bare(said)+" ") {
				t.Fatalf("%d columns: a word is cut: %s", columns, l)
			}
		}
	}
	if got := listing(entries(), 200); !strings.Contains(got, line+"\n") || strings.Contains(got, "smoothly …") {
		t.Errorf("200 columns are not all used:\n%s", got)
	}
}
