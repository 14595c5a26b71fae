// Package hang says what liquid filler bridges, holds and hangs on to: an open butt root under a running arc, a
// lap or tee with a gap, a bead on a wall or overhead, a root with backing. It holds pure functions; the data
// are in tables. Nothing here was fitted to a brazing test.
//
// Units: mm, mm2, s, Pa, N/m, kg/m3, A, rad. A margin is the logarithm of a ratio: 0 on the edge, positive
// inside, limited to ±Most. A doubt is one standard deviation of that logarithm, so that the chance to be
// inside is the normal distribution of margin over doubt.
//
// What a Joint takes from the cross-section under the moving arc (calc/section) and from wire and arc:
//
//	Thick    t      of each member's metal
//	Gap      g, h   between a butt's edges; under a lap's upper or a tee's standing sheet
//	Bead     A_b    metal laid, solid: wire area · feed · deposition efficiency / travel
//	Wet      w      wetted on each member's bead side, from the root's edge outward: arms must begin at the edges, the
//	                arc's Gaussian centred half a gap beside them
//	Back     w_back the same on the other face, where the back's peak passes the filler's toe temperature
//	Molten          width of base metal that melts away at each root edge and widens the gap
//	Front    x_e    how far ahead of the arc's centre the toe's temperature is reached at the innermost skin: travel ·
//	                (time of the arc over the section − time at which the skin first passes that temperature)
//	Pool     L      travel · time for which the innermost column stays above the temperature at which the
//	                freezing bead holds its own shape
//	Chord, Under, Phi  the bead's chord from toe to toe, the area A_ch under it and the angle φ between chord and
//	                surface, with wetted widths of at least 0.05 mm, so that no edge jumps where wetting stops
//	Wire     D      diameter
//	Amps     I      mean
//	Deposition m′   metal laid, g/s
//
// The position does not change the heat flow. A gap under a lap or tee also interrupts the heat's path to the
// upper edge, which the section models.
package hang
