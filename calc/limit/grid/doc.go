// Package grid draws limits over many wire feeds and travels without computing each of them. A caller computes the
// limits at the points that a Drawing wants; Halve then fills the points between them, by cubics, where every limit is
// clear of zero and nearly straight, and wants the others. So points are computed only near an edge.
package grid
