package batch

import (
	"context"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"brazebooth/calc"
)

// benchTables counts the tables of the benchmarks: each must have other sheets, or calc would have cached its sections.
var benchTables int

// benchRows is a new table of jobs with feed and travel, as in most batches.
func benchRows(n int, f Format) (string, []calc.Job) {
	benchTables++
	var text strings.Builder
	var jobs []calc.Job
	if f == CSV {
		text.WriteString("id,metal,gauge,joint,feed,travel\n")
	}
	metals, joints := [...]string{"galvanized", "mild-steel", "stainless-304"}, [...]string{"lap", "tee", "butt"}
	for i := range n {
		metal, joint, mm := metals[i%3], joints[i/3%3], 1.6-0.3*float64(i%3)+1e-6*float64(benchTables)
		feed, travel := 4+float64(i%20)/10, 5+float64(i%40)/10
		if f == CSV {
			fmt.Fprintf(&text, "%d,%s,%.6fmm,%s,%.1f,%.1f\n", i, metal, mm, joint, feed, travel)
		} else {
			fmt.Fprintf(&text, `{"id":"%d","metal":"%s","gauge":"%.6fmm","joint":"%s","feed":%.1f,"travel":%.1f}`+
				"\n", i, metal, mm, joint, feed, travel)
		}
		jobs = append(jobs, calc.Job{Metal: metal, Thickness: calc.Some(mm), Joint: joint, Feed: calc.Some(feed),
			Travel: calc.Some(travel)})
	}
	return text.String(), jobs
}

const benched = 360

// BenchmarkSolveLoop is a plain loop to compare with: no reading, no writing, one core.
func BenchmarkSolveLoop(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		b.StopTimer()
		_, jobs := benchRows(benched, CSV)
		b.StartTimer()
		for i := range jobs {
			if _, err := calc.Solve(jobs[i]); err != nil {
				b.Fatal(err)
			}
		}
	}
	perRow(b)
}

func BenchmarkCSV(b *testing.B)        { benchmarkRun(b, CSV, runtime.GOMAXPROCS(0)) }
func BenchmarkCSVOneCore(b *testing.B) { benchmarkRun(b, CSV, 1) }
func BenchmarkJSONLines(b *testing.B)  { benchmarkRun(b, JSONLines, runtime.GOMAXPROCS(0)) }

// BenchmarkJSONLinesOneCore minus BenchmarkSolveLoop is the cost of reading and writing whole cards.
func BenchmarkJSONLinesOneCore(b *testing.B) { benchmarkRun(b, JSONLines, 1) }

func benchmarkRun(b *testing.B, f Format, workers int) {
	b.ReportAllocs()
	for b.Loop() {
		b.StopTimer()
		text, _ := benchRows(benched, f)
		b.StartTimer()
		o := testOptions(f)
		o.Workers = workers
		if t, err := Run(context.Background(), strings.NewReader(text), io.Discard, o); err != nil ||
			t.Answered != benched {
			b.Fatal(t, err)
		}
	}
	perRow(b)
}

func perRow(b *testing.B) {
	b.ReportMetric(float64(b.N)*benched/b.Elapsed().Seconds(), "rows/s")
}
