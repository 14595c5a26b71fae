package canvas

// Lamp is one word for a hand that looks up for a moment: a whole place that is lit or dark, with a note under the
// word.
type Lamp struct {
	Word, Note string
	Lit        bool
}

// Draw fills a width and some lines; the word is as large as they allow.
func (l Lamp) Draw(th *Theme, w, h int) Block {
	if w < 4 || h < 1 {
		return nil
	}
	c, k, note := NewCells(w, h), Quiet.Ink(), Quiet.Ink()
	if l.Lit {
		k, note = Own.On(Swap), Own.On(Swap)
		c.Fill(0, 0, w, h, k)
	}
	room := h
	if h > 1 && l.Note != "" {
		room--
		c.PutCut(1, h-1, note, l.Note, w-2)
	}
	size, _ := Fit(l.Word, w-2, room)
	size.put(c, 1, max(0, room-size.Lines)/2, k|Bold, l.Word, false, th.coarse)
	return c.Lines(th)
}
