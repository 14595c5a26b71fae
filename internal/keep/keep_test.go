package keep

import (
	"context"
	"errors"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
)

func TestKeepComputesOnceForAllWhoAsk(t *testing.T) {
	k := Answers[int, string]{Most: 4}
	var runs atomic.Int32
	var wg sync.WaitGroup
	gate := make(chan struct{})
	for range 20 {
		wg.Go(func() {
			v, err := k.Answer(context.Background(), 1, nil, func(context.Context, func(float64)) (string, error) {
				runs.Add(1)
				<-gate
				return "one", nil
			})
			if v != "one" || err != nil {
				t.Errorf("got %q, %v", v, err)
			}
		})
	}
	close(gate)
	wg.Wait()
	if runs.Load() != 1 {
		t.Errorf("computed %d times", runs.Load())
	}
}

// A caller who leaves does not take the answer from those who stay.
func TestKeepGivesUpOnlyWhenNobodyWaits(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		k := Answers[int, string]{Most: 4}
		gate := make(chan struct{})
		var stopped atomic.Bool
		compute := func(ctx context.Context, _ func(float64)) (string, error) {
			select {
			case <-gate:
				return "one", nil
			case <-ctx.Done():
				stopped.Store(true)
				return "", ctx.Err()
			}
		}
		first, leave := context.WithCancel(t.Context())
		second, leaveToo := context.WithCancel(t.Context())
		var errs [2]error
		var wg sync.WaitGroup
		wg.Go(func() { _, errs[0] = k.Answer(first, 1, nil, compute) })
		wg.Go(func() { _, errs[1] = k.Answer(second, 1, nil, compute) })
		synctest.Wait()
		leave()
		synctest.Wait()
		if stopped.Load() {
			t.Fatal("one left and the answer was given up for both")
		}
		leaveToo()
		wg.Wait()
		if !stopped.Load() {
			t.Error("nobody waits and the computation goes on")
		}
		for _, err := range errs {
			if !errors.Is(err, context.Canceled) {
				t.Errorf("a caller who left was told %v", err)
			}
		}
		close(gate)
		if v, err := k.Answer(t.Context(), 1, nil, compute); v != "one" || err != nil {
			t.Errorf("asked again: %q, %v", v, err)
		}
	})
}

func TestKeepForgetsWhatWasWantedLongestAgo(t *testing.T) {
	k := Answers[int, int]{Most: 2}
	runs := 0
	ask := func(key int) {
		_, _ = k.Answer(t.Context(), key, nil, func(context.Context, func(float64)) (int, error) {
			runs++
			return key, nil
		})
	}
	for _, key := range []int{1, 2, 1, 3, 1} { // 2 leaves, not 1
		ask(key)
	}
	if runs != 3 {
		t.Errorf("%d computations, want 3", runs)
	}
	if ask(2); runs != 4 || len(k.list) != 2 || len(k.order) != 2 {
		t.Errorf("%d computations, %d kept, %d in order", runs, len(k.list), len(k.order))
	}
}

func TestKeepPanicsWhereSomebodyCanCatchIt(t *testing.T) {
	k := Answers[int, int]{Most: 2}
	for range 2 { // a panic is not kept: it is tried again
		func() {
			defer func() {
				if err, ok := recover().(error); !ok || !strings.HasPrefix(err.Error(), "broken") {
					t.Errorf("recovered %v", err)
				}
			}()
			_, _ = k.Answer(t.Context(), 1, nil, func(context.Context, func(float64)) (int, error) { panic("broken") })
			t.Error("the call returned")
		}()
	}
}

func TestKeepTellsEveryWaiterHowFarItIs(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		k := Answers[int, int]{Most: 2}
		gate := make(chan struct{})
		var wg sync.WaitGroup
		var told [3]float64
		for i := range told {
			wg.Go(func() {
				_, _ = k.Answer(t.Context(), 1, func(done float64) { told[i] = done }, func(_ context.Context,
					progress func(float64)) (int, error) {
					<-gate
					progress(0.5)
					return 1, nil
				})
			})
		}
		synctest.Wait()
		close(gate)
		wg.Wait()
		if told != [3]float64{0.5, 0.5, 0.5} {
			t.Errorf("told %v", told)
		}
	})
}
