package tables

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"brazebooth/internal/mistake"
)

func TestEveryDesignationFindsItsOwnFiller(t *testing.T) {
	for _, f := range Fillers {
		for _, name := range []string{f.ID, f.AWS, f.UNS, f.ISO, f.DIN, f.Name, strings.ToUpper(f.ID)} {
			if name == "" {
				continue
			}
			if got, err := FindFiller(name); err != nil || got.ID != f.ID {
				t.Errorf("FindFiller(%q) = %q, %v, want %q", name, got.ID, err, f.ID)
			}
		}
	}
}

func TestEveryIDFindsItsOwnRow(t *testing.T) {
	for _, m := range Metals {
		if got, err := FindMetal(m.ID); err != nil || got.ID != m.ID {
			t.Errorf("metal %q: %q, %v", m.ID, got.ID, err)
		}
	}
	for _, c := range Coatings {
		if got, err := FindCoating(c.ID); err != nil || got.ID != c.ID {
			t.Errorf("coating %q: %q, %v", c.ID, got.ID, err)
		}
	}
	for _, g := range Gases {
		if got, err := FindGas(g.ID); err != nil || got.ID != g.ID {
			t.Errorf("gas %q: %q, %v", g.ID, got.ID, err)
		}
	}
	options := []struct {
		rows []Option
		find func(string) (Option, error)
	}{{Joints, FindJoint}, {Modes, FindMode}, {Positions, FindPosition}, {Uses, FindUse}}
	for _, kind := range options {
		for _, o := range kind.rows {
			if got, err := kind.find(o.ID); err != nil || got.ID != o.ID {
				t.Errorf("option %q: %q, %v", o.ID, got.ID, err)
			}
		}
	}
}

func TestLooseTyping(t *testing.T) {
	for text, want := range map[string]string{
		"galv": "galvanized", "GALVANISED": "galvanized", "galvanzied": "galvanized", "304": "stainless-304",
		"ss316": "stainless-316", "mild": "mild-steel", "gray iron": "grey-iron", "DP 600": "dp600",
		"Aluminum Bronze": "aluminium-bronze", "copper": "copper", " brass ": "brass", "electrozinc": "electro-zinc",
	} {
		if got, err := FindMetal(text); err != nil || got.ID != want {
			t.Errorf("FindMetal(%q) = %q, %v, want %q", text, got.ID, err, want)
		}
	}
	for text, want := range map[string]string{
		"silicon bronze": "cusi3", "ERCuSi-A": "cusi3", "CuSi3Mn1": "cusi3", "ercual a1": "cual8", "C65600": "cusi3",
		"6560": "",
	} {
		got, err := FindFiller(text)
		if want == "" && err == nil || want != "" && (err != nil || got.ID != want) {
			t.Errorf("FindFiller(%q) = %q, %v, want %q", text, got.ID, err, want)
		}
	}
}

func TestDigitsAreNeverASlip(t *testing.T) {
	for _, text := range []string{"stainless-305", "dp700", "dp601"} {
		if got, err := FindMetal(text); err == nil {
			t.Errorf("FindMetal(%q) silently took %q", text, got.ID)
		}
	}
	for _, text := range []string{"G61", "G50", "Z210", "ZE50/75"} {
		if got, err := FindCoating(text); err == nil {
			t.Errorf("FindCoating(%q) silently took %q", text, got.ID)
		}
	}
}

func TestUnknownNamesTheNearest(t *testing.T) {
	for text, want := range map[string]string{"stainless": "stainless-304", "galvan": "galvanized", "st": "mild-steel",
		"unobtainium": "", "": ""} {
		_, err := FindMetal(text)
		unknown := mistake.Of(err)
		if unknown == nil {
			t.Fatalf("FindMetal(%q): %v, want a *mistake.Error", text, err)
		}
		near, is := strings.CutPrefix(unknown.Hint, "type ")
		if want == "" {
			if is || !strings.Contains(unknown.Hint, "tables metals") {
				t.Errorf("%q: %s", text, unknown.Hint)
			}
			continue
		}
		names := strings.FieldsFunc(strings.ReplaceAll(near, " or ", ", "), func(r rune) bool {
			return r == ',' ||
				r == ' '
		})
		if n := len(names); !is || n == 0 || n > 5 || !slices.Contains(names[:min(n, 3)], want) {
			t.Errorf("%q: %s, want %q among the first", text, unknown.Hint, want)
		}
	}
}

func FuzzFind(f *testing.F) {
	for _, s := range []string{"galv", "ERCuSi-A", "\x1b[2J", "\u202egalv", "", "000", "G60", strings.Repeat("é",
		200)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var errs []error
		_, err := FindMetal(text)
		errs = append(errs, err)
		_, err = FindFiller(text)
		errs = append(errs, err)
		_, err = FindCoating(text)
		errs = append(errs, err)
		for _, err := range errs {
			if err == nil {
				continue
			}
			for _, r := range err.Error() {
				if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
					t.Fatalf("%q: message %q holds %U", text, err.Error(), r)
				}
			}
		}
	})
}

func BenchmarkFindMetal(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := FindMetal("galvanized"); err != nil {
			b.Fatal(err)
		}
	}
}

// Aluminium is not aluminium bronze: the name of a metal that cannot be brazed finds no row, and the error says
// why.
func TestMetalsThatAreNotBrazed(t *testing.T) {
	for text, why := range map[string]string{
		"aluminum": "660", "Aluminium": "660", "ALU": "660", "alumini": "660", "alumnium": "660",
		"aluminium sheet": "660", "6061": "660", "6061-T6": "660",
		"EN AW-5754": "660", "AA 3003": "660", "al 5052 H32": "660", "6061 alu": "660", "zinc": "420",
		"zinc alloy": "420",
		"titanium":   "brittle", "Ti-6Al-4V": "brittle", "zamak": "420", "ZM 120": "as any zinc", "Zn-Ni": "cancer",
		"zinc-nickel": "cancer", "tool steel": "hardens", "4140": "hardens", "42CrMo4": "hardens", "C45": "hardens",
		"AZ50": "43 %", "az150": "43 %", "Al-Zn": "43 %", "55 % Al-Zn": "43 %",
	} {
		m, err := FindMetal(text)
		unknown := mistake.Of(err)
		if !errors.Is(err, ErrNotBrazed) || !strings.Contains(unknown.What, why) || unknown.Hint == "" {
			t.Errorf("%s: %s, %v", text, m.ID, err)
		}
	}
	if _, err := FindCoating("AZ55"); err == nil || !strings.Contains(err.Error(), "43 %") {
		t.Errorf("AZ55 as a coating: %v", err)
	}
}

// A name close to that of a metal that cannot be brazed still finds its own row.
func TestNearMissesStillFindTheirRow(t *testing.T) {
	for text, want := range map[string]string{
		"aluminiz": "aluminized", "aluminise": "aluminized", "aluminised": "aluminized", "alu-silicon": "aluminized",
		"aluminium-b":     "aluminium-bronze",
		"aluminum bronze": "aluminium-bronze", "1008": "mild-steel", "A1008": "mild-steel",
	} {
		if m, err := FindMetal(text); err != nil || m.ID != want {
			t.Errorf("%s: %s, %v", text, m.ID, err)
		}
	}
}

// The name of something that stops a job, typed as a metal or coating, is refused in the words of that hazard.
// A near miss gets the names that contain the word, or the families.
func TestStopsAndNearMisses(t *testing.T) {
	find := map[string]func(string) error{
		"metal":   func(s string) error { _, err := FindMetal(s); return err },
		"coating": func(s string) error { _, err := FindCoating(s); return err },
	}
	for i := range notBrazed {
		for _, word := range notBrazed[i].words {
			for kind, of := range find {
				if err := of(word); !errors.Is(err, ErrNotBrazed) {
					t.Errorf("%s %s: %v", kind, word, err)
				}
			}
		}
	}
	for typed, want := range map[string]string{"cadmium": "fume kills", "Cadmium plate": "fume kills",
		"cadmiun": "fume kills",
		"lead":    "poison", "leaded-bronze": "Lead boils out", "beryllium-copper": "scar the lungs",
		"magnesium": "burns"} {
		for kind, of := range find {
			m := mistake.Of(of(typed))
			if m == nil || !strings.Contains(m.What, want) || m.Hint == "" ||
				typed != "magnesium" && !strings.Contains(m.Hint, "see the hazard ") {
				t.Errorf("%s %s: %+v", kind, typed, m)
			}
		}
	}
	for typed, want := range map[string]string{"bronze": "type silicon-bronze or aluminium-bronze",
		"cor-ten": "sheet steel, stainless", "corten": "sheet steel, stainless"} {
		if m := mistake.Of(find["metal"](typed)); m == nil || !strings.Contains(m.Hint, want) {
			t.Errorf("%s: %+v", typed, m)
		}
	}
	if _, err := FindFiller("foo"); mistake.Of(err).Hint != "it is not in the tables: see brazebooth tables fillers" {
		t.Errorf("foo: %v", mistake.Of(err))
	}
}

// A number that is typed for the metal is a gauge or a thickness that came too early, and no part of an alloy's number.
func TestAGaugeIsNoMetal(t *testing.T) {
	for n := 1; n < 100; n++ {
		for _, unit := range []string{"", "ga", " mm", "mm"} {
			text := strconv.Itoa(n) + unit
			_, err := FindMetal(text)
			if m := mistake.Of(err); m == nil || !strings.Contains(m.Hint, "a choice of its own") {
				t.Errorf("%q: %v", text, err)
			}
		}
	}
}
