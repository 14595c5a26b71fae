package tables

// metals in the order that a booth meets them.
var metals = [...]Metal{mildSteel, galvanized, galvannealed, electroZinc, aluminized, hsla, dp600, dp800, dp1000,
	boronSteel, stainless304, stainless316, greyIron, ductileIron, copper, brass, siliconBronze, aluminiumBronze}

// Metals lists every base metal; read only.
func Metals() []Metal { return metals[:] }

// MetalByID returns the metal with exactly this id.
func MetalByID(id string) (Metal, bool) {
	return byID(metals[:], id, func(r *Metal) string { return r.ID })
}
