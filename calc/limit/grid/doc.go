// Package grid finds the limits at many wire feeds and travels without computing every point. A caller computes the
// limits at the points that a Drawing wants. Halve then interpolates the points between them by cubics, where every
// limit is clearly above or below zero and nearly straight, and wants the others. So only points near an edge are
// computed.
package grid
