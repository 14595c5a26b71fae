package tables

import (
	"strings"
	"testing"
)

func TestSaidReplacesShopWords(t *testing.T) {
	for text, want := range map[string]string{
		"no wetting": "rolled-edge", "burnt zinc": "zinc-gone-behind",
		"Burned Zinc, porosity": "zinc-gone-behind,pores", "burnt-thru": "burnt-thru",
		"porosty": "pores", "rolled-edge,pores": "rolled-edge,pores", "rolled-edge pores": "rolled-edge pores",
		"hole; cracks": "burn-through,crack", "what": "what", "": "",
	} {
		if got := SightsSaid(text); got != want {
			t.Errorf("%q of a bead is %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"fire": "fire-part", "Stove door": "fire-part",
		"confined space,pressure": "confined,pressure", "none": "none", "lead": "lead"} {
		if got := HazardsSaid(text); got != want {
			t.Errorf("%q that stops a job is %q, want %q", text, got, want)
		}
	}
}

// Every list of shop words belongs to an existing row, and no word belongs to two rows.
func TestShopWordsBelongToRows(t *testing.T) {
	for name, list := range map[string]named{"sights": sightWords, "hazards": hazardWords} {
		of := map[string]string{}
		for _, row := range list {
			_, sight := Sights.ByID(row[0])
			_, hazard := Hazards.ByID(row[0])
			if name == "sights" && !sight || name == "hazards" && !hazard {
				t.Errorf("%s: no row %s", name, row[0])
			}
			for _, w := range row {
				if other, twice := of[fold(w)]; twice {
					t.Errorf("%s: %q stands for %s and %s", name, w, other, row[0])
				}
				of[fold(w)] = row[0]
			}
		}
	}
}

func TestFindTerm(t *testing.T) {
	for word, want := range map[string]string{"short": "mode", "short circuit": "mode", "Short-Circuiting": "mode",
		"throat": "throat", "throte": "", "inductence": "", "induct": "inductance", "stick out": "stick-out",
		"zz": ""} {
		got, ok := FindTerm(word)
		if ok != (want != "") || ok && got.Word != want {
			t.Errorf("%q is %v, want %q", word, got, want)
		}
	}
	for i := range Terms {
		if got, ok := FindTerm(strings.ToUpper(Terms[i].Word)); !ok || got != &Terms[i] {
			t.Errorf("%s finds %v", Terms[i].Word, got)
		}
	}
}
