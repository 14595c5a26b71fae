package shop

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

// Readings of both dials teach the booth's card, volts of a pulsed arc apart from those of any other. A reading far off
// is flagged, and used once it is confirmed. Readings of another power source teach nothing.
func TestDialsTeach(t *testing.T) {
	ctx, s := context.Background(), newShop(t)
	keep := func(r book.Reading, job calc.Job) Done {
		t.Helper()
		done, err := s.SaveReading(ctx, r, job)
		if err != nil {
			t.Fatal(err)
		}
		return done
	}
	for i, feed := range []float64{2.5, 4.7, 6.9, 9.0, 11.1} {
		keep(book.Reading{Source: "A", FeedDial: calc.Some(2 * float64(i+1)), Feed: feed}, calc.Job{})
		keep(book.Reading{Source: "A", VoltsDial: calc.Some(float64(i)), Volts: 13 + float64(i)}, calc.Job{})
		keep(book.Reading{Source: "A", VoltsDial: calc.Some(float64(i)), Volts: 20 + 2*float64(i)},
			calc.Job{Mode: "pulsed"})
		keep(book.Reading{Source: "B", FeedDial: calc.Some(float64(i)), Feed: 1 + float64(i)}, calc.Job{})
	}
	for mode, slope := range map[string]float64{"": 1, "timed": 1, "pulsed": 2} {
		job, err := s.Recall(ctx, "a", calc.Job{Mode: mode, Wire: calc.Some(1.2)})
		if err != nil || job.FeedDial.N != 5 || job.FeedDial.Least != 2 || job.VoltsDial.N != 5 ||
			job.VoltsDial.Slope < slope-1e-9 || job.VoltsDial.Slope > slope+1e-9 {
			t.Errorf("%q: %+v, %+v, %v", mode, job.FeedDial, job.VoltsDial, err)
		}
	}
	slip := keep(book.Reading{Source: "A", FeedDial: calc.Some(4), Feed: 8}, calc.Job{})
	if text := strings.Join(slip.Lines, "\n"); !strings.Contains(text, "FLAGGED: the reading "+slip.ID) ||
		!strings.Contains(text, "the feed's dial, from 2 to 10: 5 readings") {
		t.Errorf("a slip: %s", text)
	}
	if _, err := s.Confirm(ctx, slip.ID); err != nil {
		t.Fatal(err)
	}
	if job, err := s.Recall(ctx, "A", calc.Job{}); err != nil || job.FeedDial.N != 6 {
		t.Errorf("confirmed: %+v, %v", job.FeedDial, err)
	}
}

// An older reading without dials keeps its body byte for byte when it is written again.
func TestReadingsOfBeforeStay(t *testing.T) {
	const before = `{"source":"booth 1","filler":"cusi3","wire":0.889,"mode":"dip","feed":6.35,"stickout":12,"amps":96}`
	r, err := book.Body[book.Reading](&book.Revision{Body: []byte(before)})
	if err != nil || r.FeedDial.Set || r.VoltsDial.Set {
		t.Fatalf("%+v, %v", r, err)
	}
	if b, err := json.Marshal(r); err != nil || string(b) != before {
		t.Errorf("%s, %v", b, err)
	}
}
