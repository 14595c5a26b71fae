package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"time"

	"github.com/creack/pty"
)

// keys measures, through a pseudo-terminal of 80 x 24, the time from a key on the card to the complete new frame, the
// frame's bytes, and the memory of the screens.
func keys(own string) error {
	cmd := exec.Command(own)
	// without a state folder the walk for newcomers is not shown
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "COLORTERM=", "XDG_STATE_HOME="+os.DevNull)
	term, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		return err
	}
	defer func() { _ = cmd.Process.Kill(); _ = term.Close(); _ = cmd.Wait() }()
	out := make(chan int, 64)
	go func() {
		buf := make([]byte, 64<<10)
		for {
			n, err := term.Read(buf)
			if err != nil {
				close(out)
				return
			}
			out <- n
		}
	}()
	settled(out, time.Second)
	for range 4 {
		_, _ = term.WriteString("\t")
		settled(out, 300*time.Millisecond)
	}
	var took []time.Duration
	bytes := 0
	const presses = 200
	for n := range presses {
		begin := time.Now()
		if _, err := term.WriteString([]string{"\x1b[B", "\x1b[A", "+", "-"}[n%4]); err != nil {
			return err
		}
		last, sum := settled(out, 60*time.Millisecond)
		if sum == 0 {
			continue
		}
		took, bytes = append(took, last.Sub(begin)), bytes+sum
	}
	if len(took) < presses/2 {
		return fmt.Errorf("only %d of %d keys drew anything", len(took), presses)
	}
	slices.Sort(took)
	ms := func(share float64) float64 { return took[int(share*float64(len(took)-1))].Seconds() * 1e3 }
	fmt.Printf("a key on the card, to the frame    p50 %.1f ms, p99 %.1f ms, %d bytes\n", ms(0.5), ms(0.99),
		bytes/len(took))
	fmt.Printf("memory of the screens              %s resident\n", resident(cmd.Process.Pid))
	return nil
}

// settled waits until no bytes came for a while, and returns when the last ones came and how many there were.
func settled(out <-chan int, quiet time.Duration) (last time.Time, sum int) {
	for {
		select {
		case n, open := <-out:
			if !open {
				return last, sum
			}
			last, sum = time.Now(), sum+n
		case <-time.After(quiet):
			return last, sum
		}
	}
}

var residentLine = regexp.MustCompile(`VmRSS:\s+(\d+) kB`)

// resident is a process's memory as Linux counts it.
func resident(pid int) string {
	b, err := os.ReadFile(filepath.Join("/proc", strconv.Itoa(pid), "status"))
	m := residentLine.FindSubmatch(b)
	if err != nil || m == nil {
		return "not known here"
	}
	kB, _ := strconv.ParseFloat(string(m[1]), 64)
	return fmt.Sprintf("%.1f MB", kB/1e3)
}

// models runs the benchmarks of the computation and prints the time of a call.
func models() error {
	out, err := exec.Command("go", "test", "./calc/...", "-run", "^$", "-bench",
		"^Benchmark(SolveGiven|SolveSearch|Window|TimedSteel|Correct)$", "-benchtime", "10x",
		"-benchmem").CombinedOutput()
	if err != nil {
		return fmt.Errorf("%w\n%s", err, out)
	}
	line := regexp.MustCompile(`Benchmark(\w+)-?\d*\s+\d+\s+([0-9.]+) ns/op.*?(\d+) B/op\s+(\d+) allocs/op`)
	for _, m := range line.FindAllSubmatch(out, -1) {
		ns, _ := strconv.ParseFloat(string(m[2]), 64)
		fmt.Printf("%-34s %.2f ms, %s B, %s allocations\n", m[1], ns/1e6, m[3], m[4])
	}
	return nil
}
