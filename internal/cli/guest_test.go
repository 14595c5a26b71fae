package cli

import (
	"bytes"
	"context"
	"runtime"
	"strings"
	"testing"
)

// A guest cannot ask for completions: the library writes a wrong request to the server's log.
func TestNoCompletionForGuests(t *testing.T) {
	for _, args := range []string{"__complete card --gauge ", "__completeNoDesc card --gauge ",
		"--units metric __complete card --gauge ", "completion bash"} {
		var out, told bytes.Buffer
		if code := Run(context.Background(), strings.Split(args, " "), Deps{Out: &out, Err: &told,
			Remote: true}); code != 2 || out.Len() > 0 || !strings.Contains(told.String(), "unknown command") {
			t.Errorf("%s: exit %d, %s%s", args, code, &out, &told)
		}
	}
}

// A server builds a command tree for every command: the memory of each is freed.
func TestTreesOfGuestsAreFreed(t *testing.T) {
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
