package tui

// helpBody lists every key by what it does, and the signs that the screens use.
func helpBody(k *keyMap) func(th *theme, w int) block {
	return func(th *theme, w int) block {
		var b block
		for _, g := range k.groups() {
			b.add(newRow(w).put(th.bold, g.title).line())
			for _, key := range g.keys {
				r := newRow(w).blank(2).put(th.accent, key.Help().Key)
				b.addAll(flow(r, []piece{{14, th.plain, key.Help().Desc}}, 14, w))
			}
			b.skip()
		}
		b.add(newRow(w).put(th.bold, "signs").line())
		for _, s := range [...][2]string{
			{"~", "assumed: nobody chose it yet"},
			{"yours", "you changed it; r puts the suggestion back"},
			{"5.5–7.3", "the band that 95 of 100 fall in, or how far a setting may go alone"},
			{"■ ▲ •", "stop, caution, note"},
		} {
			r := newRow(w).blank(2).put(th.accent, s[0])
			b.addAll(flow(r, []piece{{14, th.plain, s[1]}}, 14, w))
		}
		return b
	}
}
