package advice

import (
	"math"
	"strconv"

	"brazebooth/calc"
	"brazebooth/tables"
)

// laying is the order in which a seam's pieces are laid.
func (p *Page) laying(card *calc.Card) {
	if card.Setup.One || card.Used.Joint == "plug" {
		p.lineUnder(tables.TopicLay, "crater")
		return
	}
	piece := tables.SeamPiece
	if p.has(tables.CastIron) {
		piece = tables.IronBead
		p.line("iron-short")
	} else {
		p.line("skip")
	}
	length := card.Used.Length.Or(usualSeam)
	if length >= tables.SkipFrom.V || p.has(tables.CastIron) {
		n := int(math.Ceil(length/piece.V - 1e-9))
		blocks := (n + mostPieces - 1) / mostPieces
		p.Order = SkipOrder((n + blocks - 1) / blocks)
		if blocks > 1 {
			p.Because(piece.Origin, "a seam of %d pieces: %d blocks, each in the order shown", n,
				blocks).Topic = tables.TopicLay
		}
		p.add("seam_pieces", "1", float64(n), math.Ceil(length/piece.High-1e-9), math.Ceil(length/piece.Low-1e-9),
			calc.RowBasis("{L}/{p}, rounded up", piece.Origin, calc.In("L", "seam", length, "mm"),
				calc.In("p", "a piece", piece.V, "mm")))
	}
	if card.Used.Use == "seal" {
		p.line("seal-overlap")
	}
	p.lineUnder(tables.TopicLay, "crater")
	p.lineUnder(tables.TopicLay, "no-glow")
}

// mostPieces is how many pieces of a seam are drawn in one block.
const mostPieces = 24

// SkipOrder returns, for each of n pieces from the seam's start to its end, its turn. Every second piece is
// laid first, then those between; from four pieces on, no two neighbours are laid in succession.
func SkipOrder(n int) []string {
	order := make([]string, n)
	turn := 1
	first := 0
	if n > 2 && n%2 == 0 {
		first = 1
	}
	for _, from := range [...]int{first, 1 - first} {
		for i := from; i < n; i += 2 {
			order[i] = strconv.Itoa(turn)
			turn++
		}
	}
	return order
}
