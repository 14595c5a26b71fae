package cli

import (
	"runtime"
	"testing"
)

// A server builds a tree for every command and for the name of it: nothing of one stays.
func TestTreesOfGuestsAreGivenBack(t *testing.T) {
	heap := func() uint64 {
		runtime.GC()
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	build := func(n int) {
		for range n {
			NameOf([]string{"card"})
			New(Deps{Remote: true})
		}
	}
	build(10)
	before := heap()
	build(200)
	if after := heap(); after > before+1<<20 {
		t.Errorf("200 trees leave %d kB", (after-before)>>10)
	}
}
