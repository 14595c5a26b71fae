package thinsheet

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// plane is a hot sheet of the usual size, with its faces and segments set.
func plane(b *testing.B) *Sheet {
	b.Helper()
	r := rhythm(steelish(), 1.5, 2)
	s, err := New(r.Input)
	if err != nil {
		b.Fatal(err)
	}
	for range 20 {
		s.Step(0.008, true)
	}
	s.faces()
	return s
}

func perSecond(b *testing.B, cells int) {
	b.ReportMetric(float64(cells)*float64(b.N)/b.Elapsed().Seconds()/1e6, "Mcells/s")
}

func BenchmarkConduct(b *testing.B) {
	s := plane(b)
	b.ReportAllocs()
	for b.Loop() {
		s.conduct(s.rate, func(int, int) {})
	}
	perSecond(b, len(s.e))
}

func BenchmarkInvert(b *testing.B) {
	s := plane(b)
	b.ReportAllocs()
	for b.Loop() {
		s.invert()
	}
	perSecond(b, len(s.e))
}

// BenchmarkWhole times the whole solver; a cell update is one stage of conduction in one cell.
func BenchmarkWhole(b *testing.B) {
	s := plane(b)
	b.ReportAllocs()
	stages := 0
	for n := 0; b.Loop(); n++ {
		if n%50 == 0 {
			s.Advance(3)
		}
		s.Step(0.008, n%50 < 20)
		stages += s.stages
	}
	b.ReportMetric(float64(stages)*float64(len(s.e))/b.Elapsed().Seconds()/1e6, "Mcells/s")
}

func BenchmarkBridge(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Bridge(rhythm(steelish(), 1.5, 2), nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBesideC runs Go's loops and the same loops in C in turn. It reports Go's time over that of C without
// and with vectorisation, and over NumPy's if that is installed.
func BenchmarkBesideC(b *testing.B) {
	s := plane(b)
	nx, ny := s.g.nx, s.rows
	outside := map[string]func() (conduct, invert float64, err error){}
	for name, flags := range map[string][]string{"C": {"-fno-tree-vectorize"}, "vectorised-C": {"-march=native",
		"-DSPLIT"}} {
		exe := filepath.Join(b.TempDir(), name)
		if out, err := exec.Command("cc", append(flags, "-O3", "-o", exe,
			"testdata/kernel.c")...).CombinedOutput(); err != nil {
			b.Skipf("no C compiler to compare with: %v %s", err, out)
		}
		outside[name] = func() (float64, float64, error) {
			return runTimes(exec.Command(exe, fmt.Sprint(nx), fmt.Sprint(ny), "300"))
		}
	}
	numpy := func() (float64, float64, error) {
		return runTimes(exec.Command("python3", "testdata/kernel.py", fmt.Sprint(nx), fmt.Sprint(ny), "20"))
	}
	if _, _, err := numpy(); err != nil {
		b.Logf("NumPy is not here: left out")
	} else {
		outside["NumPy"] = numpy
	}
	for b.Loop() {
		for name, run := range outside {
			goConduct, goInvert := 1e300, 1e300
			for range 300 {
				goConduct = min(goConduct, nanosPerCell(s, func() { s.conduct(s.rate, func(int, int) {}) }))
				goInvert = min(goInvert, nanosPerCell(s, s.invert))
			}
			conduct, invert, err := run()
			if err != nil {
				b.Fatal(err)
			}
			b.ReportMetric(goConduct/conduct, "conduct-Go/"+name)
			b.ReportMetric(goInvert/invert, "invert-Go/"+name)
		}
	}
}

func nanosPerCell(s *Sheet, f func()) float64 {
	at := time.Now()
	for range 20 {
		f()
	}
	return float64(time.Since(at).Nanoseconds()) / 20 / float64(len(s.e))
}

func runTimes(cmd *exec.Cmd) (conduct, invert float64, err error) {
	out, err := cmd.Output()
	if err == nil {
		_, err = fmt.Sscan(strings.TrimSpace(string(out)), &conduct, &invert)
	}
	return conduct, invert, err
}
