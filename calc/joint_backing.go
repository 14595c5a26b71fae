package calc

import (
	"fmt"
	"math"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

// The backings of a butt, ids of tables.
const (
	noBacking   = "none"
	copperBar   = "copper-bar"
	steelStrip  = "steel-strip"
	patchBehind = "patch"
)

// backing looks the backing up and leaves it out where the joint has none. A patch turns the butt into the lap of the
// first member on the patch, a piece of the same sheet.
func (r *resolution) backing() error {
	u := &r.used
	if u.Backing == "" {
		u.Backing = noBacking
	}
	if _, err := row("backing", u.Backing, tables.Backings.ByID, tables.FindBacking); err != nil {
		return err
	}
	switch {
	case u.Joint == "butt" && u.Backing == patchBehind:
		u.Joint, u.Gap = "lap", Some(0)
		u.Metal2, u.Gauge2, u.Thickness2, u.Coating2 = "", 0, Opt{}, ""
		r.assume("joint", "lap", "a patch makes two laps of a butt; this is one of them, the sheet on the patch")
	case u.Joint == "lap" && u.Backing == patchBehind: // as above, completed
	case u.Joint != "butt":
		u.Backing = ""
	}
	return nil
}

// backed is the bar or strip behind a butt's root, "" for neither.
func (j *Job) backed() string {
	if j.Joint == "butt" && (j.Backing == copperBar || j.Backing == steelStrip) {
		return j.Backing
	}
	return ""
}

// backingNotJudged says why no section is computed over a job's bar or strip; "" else.
func backingNotJudged(card *Card) string {
	u, m := &card.Used, &card.Setup.Members
	switch {
	case u.backed() == "":
	case maxCore(card.Setup.Joined()) > tables.SheetThickest.V:
		return fmt.Sprintf("nothing here computes what a bar or strip behind more than %.0f mm does",
			tables.SheetThickest.V)
	case u.Backing == copperBar:
	case u.Gap.V < tables.StripGap.V:
		return fmt.Sprintf("through a root opening under %.1f mm nothing joins the strip", tables.StripGap.V)
	case m[0].Metal.ID != m[1].Metal.ID || math.Abs(m[0].Core-m[1].Core) > unlike*m[0].Core:
		return "nothing here computes a strip behind two unlike sheets"
	}
	return ""
}

// unlike is the relative difference up to which two thicknesses count as alike: that of a coating.
const unlike = 0.03

// behind adds the bar or strip behind the root to the section's input.
func (b *board) behind(in *section.Input, backing string) {
	switch backing {
	case copperBar:
		in.Bar = section.Bar{Dry: b.inputs[inBarDry] * 1e-6, Wet: b.inputs[inBarWet] * 1e-6}
	case steelStrip:
		if in.Gap < tables.StripGap.V { // not judged; see backingNotJudged
			return
		}
		in.Joint, in.Thick[1], in.Base[1] = section.StripJoint, in.Thick[0], in.Base[0]
	}
}

// bareRoot takes bar or strip off a section's input.
func bareRoot(in *section.Input) {
	in.Bar = section.Bar{}
	if in.Joint == section.StripJoint {
		in.Joint = section.ButtJoint
	}
}

// onStrip gives the second sheet of a butt on a strip the values of the first, since the two are alike. The second skin
// and core stay the strip's: it must be wetted and must not melt, like a sheet.
func (s *heatState) onStrip() {
	if s.wet[1] > 0 {
		s.wet[1] = s.wet[0]
	}
	for _, band := range [...]*[2]float64{&s.boiled, &s.melted, &s.boiledBack, &s.meltedBack} {
		band[1] = band[0]
	}
}

// backing says what a bar, strip or patch behind the root changes.
func (w *warnings) backing(v *verdict) {
	u, asked := &w.card.Used, w.card.Job.Backing
	switch backing := u.backed(); {
	case backing != "":
		w.say(backing)
		if bare := v.variants.bare; v.modelled && bare != nil {
			w.tell("backing-heat", Info, SectionSource, "At this setting the sheet's skin gets %.0f °C hot and wets "+
				"%.1f mm beside the root; without the %s %.0f °C and %.1f mm.", v.state.skin[0], v.state.wet[0],
				backingName(backing), bare.skin[0], bare.wet[0])
		}
	case u.Backing == patchBehind:
		w.say(patchBehind)
	case asked != "" && asked != noBacking:
		w.say("backing-unused")
	}
}

// drawnBacking is how much of a bar or strip a picture shows, mm: a strip is as thick as the sheet; of a bar only the
// face counts.
func drawnBacking(backing string, sheet float64) float64 {
	const face = 2
	switch backing {
	case copperBar:
		return face
	case steelStrip:
		return sheet
	}
	return 0
}

// BackingOf names what lies behind a card's joint; "" for nothing.
func BackingOf(card *Card) string {
	if id := card.Used.Backing; id != noBacking {
		return backingName(id)
	}
	return ""
}

func backingName(id string) string {
	b, _ := tables.Backings.ByID(id)
	return b.Name
}
