package canvas

// stripes are diagonal bands as on a barrier: a stop without words.
func stripes(c *Cells, x, y, w, h int, k Ink) {
	for j := range h {
		for i := range w {
			mask := 0
			for n := range 4 {
				across, down := 2*i+n%2, 2*j+n/2
				if (across+2*down)/4%2 == 0 {
					mask |= 1 << n
				}
			}
			c.Set(x+i, y+j, k, quadrants[mask])
		}
	}
}
