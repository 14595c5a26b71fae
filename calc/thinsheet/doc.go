// Package thinsheet computes the heat flow in the plane of a thin sheet under an arc that is at rest, pulses or
// travels, with filler that arrives hot and a root gap that has no metal until it is filled.
//
// # What is solved
//
// The temperature is uniform through the sheet. Each cell of area A holds base metal and filler, m_b and m_f in
// g/mm², and the areal enthalpy E in J/mm² above 20 °C:
//
//	dE/dt = div(κ grad T) + q(arc) + h(drop)·dm_f/dt − loss(T),   E = m_b·H_b(T) + m_f·H_f(T)
//
// κ = k_b·m_b/ρ_b + s·k_f·m_f/ρ_f in W/K, H piecewise linear in T with both melting ranges, s the stirring of
// liquid filler. A joint is a fan of up to three arms, half planes that meet in the line y = 0; one mirrored
// arm is half of a symmetric joint.
//
// # How
//
// Finite volumes: cells are uniform within four standard deviations of the arc and grow by a quarter each
// beyond; face conductances are harmonic means. Sources are Strang-split from conduction. Conduction takes one
// second-order Runge-Kutta-Legendre super-time-step, of two stages where an explicit step would be enough
// (Meyer, Balsara and Aslam, J. Comput. Phys. 257, 2014); explicit Euler steps, tried first, cost 2 K for each
// millisecond. The grid's window follows the arc by whole cells, so that the fine part is not smeared. The
// energy balance holds to round-off.
//
// # Validity
//
// Sheet up to about 3 mm: the temperature difference through the thickness, q″t/6k of the mean, is added where
// a root edge is judged and ignored elsewhere. Surface tension, arc force and evaporation are not modelled. On
// the default 0.5 mm cells the times for a gap differ by a few per cent from those on 0.25 mm; the result gives
// the difference if both were run.
//
// Besides the standard library the package uses only internal/crew.
package thinsheet
