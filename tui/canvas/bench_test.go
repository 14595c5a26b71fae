package canvas

import (
	"testing"

	"github.com/charmbracelet/colorprofile"
)

// The time that a part costs when it has changed. All parts of a card together should stay below 200 µs at 80 columns.
func BenchmarkParts(b *testing.B) {
	th := themesToTry()["full"]
	for _, w := range []int{80, 120} {
		for _, p := range allParts(w) {
			b.Run(p.name+"/"+map[int]string{80: "80", 120: "120"}[w], func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					p.draw(th, w, p.lines)
				}
			})
		}
	}
}

func BenchmarkCard(b *testing.B) {
	th := themesToTry()["full"]
	b.ReportAllocs()
	for b.Loop() {
		tryStrip.Draw(th, 80, 4)
		tryChips.Draw(th, 80, 2)
		tryDials.Draw(th, 58, 7).beside(60, tryLap.Draw(th, 19, 7))
	}
}

func BenchmarkSight(b *testing.B) {
	th := themesToTry()["full"]
	b.ReportAllocs()
	for b.Loop() {
		DrawSight(th, "spatter", 18, 4)
	}
}

func BenchmarkTheme(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		ThemeOf(ThemeDark, true, colorprofile.ANSI256, false)
	}
}
