package tables

// Shade is the filter shade for one range of arc current, gas metal arc.
type Shade struct {
	Above, UpTo float64 // A; Above < current <= UpTo, the first row from 0
	Minimum     Datum   // the law's floor
	Suggested   Datum   // what to start with; 0 where the guide gives nothing
	Note        string
}

func shade(n float64, o Origin) Datum { return Datum{n, n, n, "shade", o} }

var (
	shadeLaw   = read("29 CFR 1910.133(a)(5)")
	shadeGuide = read("ANSI Z49.1 shade guide as reproduced")
)

// shades: current is the arc-on current, of a pulsed arc its peak. State tables differ: California and
// Michigan give 11 for gas-shielded work on nonferrous metal and 12 on ferrous at any current.
var shades = [...]Shade{
	{0, 60, shade(7, shadeLaw), shade(0, shadeGuide),
		"Start dark, 10 or 11, and go lighter until you see the puddle; never under the minimum"},
	{60, 160, shade(10, shadeLaw), shade(11, shadeGuide), ""},
	{160, 250, shade(10, shadeLaw), shade(12, shadeGuide), ""},
	{250, 500, shade(10, shadeLaw), shade(14, shadeGuide), ""},
}

// Shades lists the shade table; read only.
func Shades() []Shade { return shades[:] }

// ShadeFor returns the row for an arc-on current in A, and false outside the table: no more than 0, over
// 500, or no number.
func ShadeFor(amps float64) (Shade, bool) {
	for i := range shades {
		if amps > shades[i].Above && amps <= shades[i].UpTo {
			return shades[i], true
		}
	}
	return Shade{}, false
}
