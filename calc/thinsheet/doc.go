// Package thinsheet is the heat flow in the plane of a thin sheet under an arc that stands, pulses or
// travels, with filler arriving hot and a root gap that has no metal until it is filled.
//
// # What is solved
//
// The temperature is uniform through the sheet. Each cell of area A holds base metal and filler, m_b and
// m_f in g/mm², and the areal enthalpy E in J/mm² above 20 °C:
//
//	dE/dt = div(κ grad T) + q(arc) + h(drop)·dm_f/dt − loss(T),   E = m_b·H_b(T) + m_f·H_f(T)
//
// κ = k_b·m_b/ρ_b + s·k_f·m_f/ρ_f in W/K, H piecewise linear in T with both melting ranges, s the
// stirring of liquid filler. A joint is a fan of up to three arms, half planes that meet in the line y = 0;
// one arm alone, mirrored, is half of a symmetric joint.
//
// # How
//
// Finite volumes: cells uniform within four standard deviations of the arc, growing by a quarter each beyond, face
// conductances harmonic means. Sources are Strang-split from conduction; conduction takes one second-order
// Runge-Kutta-Legendre super-time-step, of two stages where an explicit step would do (Meyer, Balsara and Aslam, J.
// Comput. Phys. 257, 2014); explicit Euler steps, tried first, cost 2 K for each millisecond. The grid's window
// follows the arc by whole cells, so that nothing smears where it matters. Energy closes to round-off.
//
// # Validity
//
// Sheet up to about 3 mm: the difference through the thickness, q″t/6k of the mean, is added where a root edge is
// judged and left out elsewhere. Surface tension, arc force and evaporation are left out. On the default 0.5 mm cells
// the times of a gap differ by a few per cent from those on 0.25 mm; the result says by how much where both were run.
//
// The package needs the standard library only.
package thinsheet
