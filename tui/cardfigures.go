package tui

// figures are what follows, in as many columns as there is room for, and the lines that the cursor's row takes.
func (p *cardPage) figures(m *root, w int) (b block, first, last int) {
	isFigure := func(r *cardRow) bool { return r.group() == figureGroup }
	numbered := func(r *cardRow) bool { return isFigure(r) && r.numbered() }
	cols := measure(p.rows, numbered)
	wide := cols.label + 1 + cols.number + 1 + cols.unit + 2 + cols.band
	if cols.alt > 0 {
		wide += cols.alt + 2
	}
	var list []int
	for i := range p.rows {
		if r := &p.rows[i]; isFigure(r) && (r.numbered() || i == p.at || m.h >= 50 || m.h < 30) {
			list = append(list, i)
		}
	}
	columns := max(1, (w+2)/(wide+2))
	if p.columns = columns; columns == 1 {
		for _, i := range list {
			lines := p.rows[i].draw(&m.th, cols, i == p.at, w)
			if i == p.at {
				first, last = len(b), len(b)+len(lines)-1
			}
			b.addAll(lines)
		}
		return b, first, last
	}
	lines := (len(list) + columns - 1) / columns
	each := (w + 2) / columns
	for y := range lines {
		r := newRow(w)
		for x := range columns {
			n := y*columns + x
			if n >= len(list) {
				continue
			}
			i := list[n]
			if i == p.at {
				first, last = y, y
			}
			p.rows[i].cells(&m.th, r.to(x*each), cols, i == p.at, x*each+wide)
		}
		b.add(r.line())
	}
	return b, first, last
}

// cells puts a figure into its column: name, number, unit, band.
func (r *cardRow) cells(th *theme, to *row, c columns, chosen bool, end int) {
	at := to.used
	to.put(th.under(chosen, th.plain), r.label).to(at + c.label + 1)
	if !r.numbered() {
		if width(r.words) <= end-to.used { // else enter tells
			to.put(th.plain, r.words)
		}
		return
	}
	v := &r.fig.Value
	to.blank(c.number-width(v.Number)).put(th.plain, v.Number+" "+v.Unit)
	if c.alt > 0 {
		to.to(at+c.label+1+c.number+1+c.unit+2).put(th.plain, r.fig.Other.String())
	}
	to.to(end-c.band).put(th.plain, v.Band())
}
