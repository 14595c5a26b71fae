package section

import "math"

// LapThroat returns the shortest distance from a closed lap's root to the bead's surface, mm. The root is where
// the edge of the upper sheet, thickness t, meets the lower one; wu and wl are the wetted widths above and
// below, phi the angle between chord and surface. It is at most the wetted width below, and at most the
// distance to the upper toe. Geometry of a circular arc over the chord from toe to toe.
func LapThroat(wu, wl, t, phi float64) float64 {
	most := min(wl, math.Hypot(wu, t))
	chord := math.Hypot(wu+wl, t)
	// The chord's middle, the unit vector along it and the one that points away from the root, with the root at
	// 0, 0.
	mx, my := (wl-wu)/2, t/2
	ex, ey := (wu+wl)/chord, -t/chord
	nx, ny := -ey, ex
	if math.Abs(phi) < 1e-6 {
		return min(most, math.Abs(mx*nx+my*ny))
	}
	r := chord / 2 / math.Sin(phi) // negative if the bead is hollow
	cx, cy := mx-nx*r*math.Cos(phi), my-ny*r*math.Cos(phi)
	to := math.Hypot(cx, cy)
	outward := -(cx*nx + cy*ny) / to // cosine between the arc's axis and the line from its centre through the root
	if r < 0 {
		outward = -outward
	}
	if outward < math.Cos(phi) { // the nearest point of the circle is beyond a toe
		return most
	}
	if r < 0 { // the root is outside the hollow's circle, or the surface is below it
		return max(0, min(most, to+r))
	}
	return max(0, min(most, r-to))
}

// Cap returns the height of a bead over its chord, mm; negative if it is hollow.
func Cap(t Toes) float64 { return t.Chord / 2 * math.Tan(t.Phi/2) }

// OffMiddle returns the height, mm, of a rigid-plastic section of height h that carries a pull whose line is e
// off the section's middle: n·h, where n solves 4·n·e/h = 1 − n², the full plastic interaction of force and
// moment in a rectangle. A lower bound by the static theorem of plasticity; with e zero it is h.
func OffMiddle(h, e float64) float64 {
	return math.Sqrt(4*e*e+h*h) - 2*math.Abs(e)
}
