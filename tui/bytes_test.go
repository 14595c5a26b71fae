package tui

import (
	"context"
	"io"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// line24 is a terminal that counts the bytes sent to it.
type line24 struct{ n atomic.Int64 }

func (l *line24) Write(p []byte) (int, error) {
	l.n.Add(int64(len(p)))
	return len(p), nil
}

// settle waits a second on the clock of a synctest bubble and returns the bytes sent so far.
func (l *line24) settle() int {
	time.Sleep(time.Second)
	synctest.Wait()
	return int(l.n.Load())
}

// byTheClock shows the screens in a terminal of 80 by 24, on the clock of a synctest bubble, until the test ends.
func byTheClock(t *testing.T, o Options) (*tea.Program, *line24) {
	t.Helper()
	in, type_ := io.Pipe()
	out := new(line24)
	o.Solve, o.Profile, o.Env = solved, colorprofile.ANSI256, []string{"TERM=xterm-256color"}
	ctx, cancel := context.WithCancel(context.Background())
	p := tea.NewProgram(New(o), append(programOptions(ctx, o, in, out), tea.WithWindowSize(80, 24),
		tea.WithoutSignalHandler())...)
	done := make(chan struct{})
	go func() { _, _ = p.Run(); close(done) }()
	t.Cleanup(func() { cancel(); _ = type_.Close(); <-done })
	return p, out
}

// sends runs the screens on the card and returns how many bytes each key causes, as the library's own renderer sends
// them at 120 frames a second.
func sends(t *testing.T, job calc.Job, keys ...string) (costs []int) {
	t.Helper()
	p, out := byTheClock(t, Options{Opening: job, Window: coarse})
	was := out.settle()
	for _, k := range keys {
		p.Send(keyPress(k))
		now := out.settle()
		costs = append(costs, now-was)
		was = now
	}
	return costs
}

// A key on the card sends at most 700 bytes, also if it moves the suggestions of both feed and travel; picking sends at
// most 150, and a key that changes nothing sends none. This holds while the verdict stays the same, because another
// verdict draws the strip again. The job matters too: a caution that appears or goes moves the lines below it.
func TestBytesAKey(t *testing.T) {
	open := calc.Job{Metal: "galvanized", Gauge: 20}
	given := open
	given.Feed, given.Travel = calc.Some(4.3), calc.Some(7)
	for _, job := range []calc.Job{given, open} {
		synctest.Test(t, func(t *testing.T) {
			keys := []string{"right", "right", "up", "up", "down", "left", "+", "r", "left", "up", "left"}
			for i, n := range sends(t, job, keys...) {
				most := 700
				picks := keys[i] == "left" || keys[i] == "right"
				if picks && (i == 0 || keys[i-1] != "r") { // r leaves a message, whose end moves the cautions
					most = 150
				}
				t.Logf("%-6s %4d bytes", keys[i], n)
				if n > most {
					t.Errorf("%s sends %d bytes", keys[i], n)
				}
			}
		})
	}
	synctest.Test(t, func(t *testing.T) {
		costs := sends(t, open, "right", "left", "z", "z")
		if costs[0] == 0 || costs[2] != 0 || costs[3] != 0 {
			t.Errorf("two keys, and two without meaning, send %v bytes", costs)
		}
	})
}

// A key that changes the verdict sends at most 1,100 bytes: it colours the strip again and nothing else. A step on the
// map sends at most 1,500, or 2,200 if the cross-hair is as high as the map. The map and the rows beside it stay in
// place, however long their numbers are, and also if a number is missing.
func TestBytesOfVerdictAndMap(t *testing.T) {
	deep.Turn(t)
	job := calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.3), Travel: calc.Some(7)}
	thick := job
	thick.Gauge = 16
	up := slices.Repeat([]string{"up"}, 8)
	for _, x := range []struct {
		most int
		job  calc.Job
		keys []string
	}{
		{1100, job, up},
		{1500, job, strings.Fields("m right right right up up left down down down")},
		{2200, thick, slices.Concat([]string{"m"}, up[:4], slices.Repeat([]string{"right"}, 4), up[:1])},
	} {
		synctest.Test(t, func(t *testing.T) {
			for i, n := range sends(t, x.job, x.keys...) {
				t.Logf("%-6s %4d bytes", x.keys[i], n)
				if n > x.most && x.keys[i] != "m" {
					t.Errorf("%s sends %d bytes", x.keys[i], n)
				}
			}
		})
	}
}

// Nothing is sent while nobody presses a key.
func TestNothingIsSentWithoutAKey(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		_, out := byTheClock(t, Options{})
		before := out.settle()
		time.Sleep(time.Minute)
		if after := out.settle(); before == 0 || after != before {
			t.Errorf("%d bytes were sent at first, %d at rest", before, after-before)
		}
	})
}
