package canvas

import "math"

// Scale is how many millimetres a column of the drawing stands for in a width and some lines; 0 where there is none. A line
// stands for twice as much.
func (s *Joint) Scale(w, h int) float64 {
	if w < 12 || h < 3 || !s.sane() {
		return 0
	}
	f := s.frame()
	return max((f.right-f.left)/float64(w), (f.top-f.low)/float64(h)/2)
}

// Draw sets the joint to scale into a width and some lines, standing on the last one, in the middle.
func (s *Joint) Draw(th *Theme, w, h int) Block {
	scale := s.Scale(w, h)
	if scale == 0 {
		return nil
	}
	f := s.frame()
	columns := min(w, int(math.Ceil((f.right-f.left)/scale-1e-9)))
	lines := min(h, int(math.Ceil((f.top-f.low)/(2*scale)-1e-9)))
	// Faces on the edges of dots: half a dot of a thin sheet is much of it.
	left := f.left - (float64(columns)*scale-(f.right-f.left))/2
	top := f.low + float64(lines)*2*scale
	c := NewCells(w, h)
	picture(c, th, (w-columns)/2, h-lines, columns, lines, func(column, line float64) part {
		return s.at(left+column*scale, top-line*2*scale, scale)
	})
	return c.Lines(th)
}
