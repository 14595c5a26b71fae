package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"sync"
	"time"
)

// churn lets guests come and go for a long time and shows whether the server's memory grows.
func churn(args []string) error {
	f := flag.NewFlagSet("churn", flag.ContinueOnError)
	minutes := f.Float64("minutes", 60, "how long")
	places := f.Int("sessions", 20, "guests at once")
	if err := f.Parse(args); err != nil {
		return err
	}
	dir, program, err := built()
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	d, err := ownDoor(dir, program)
	if err != nil {
		return err
	}
	defer d.close()
	begin, end := time.Now(), time.Now().Add(time.Duration(*minutes*float64(time.Minute)))
	n, fault := 0, error(nil)
	for i, next := 0, begin; ; i++ {
		if err := d.state(fmt.Sprintf("after %6d guests, %4.1f minutes", n, time.Since(begin).Minutes())); err != nil {
			return err
		}
		if fault != nil || !time.Now().Before(end) {
			return fault
		}
		next = next.Add(end.Sub(begin) / 10)
		var came int
		came, fault = d.comeAndGo(*places, next)
		n += came
		time.Sleep(3 * time.Second) // until the last guests have gone
	}
}

// state prints the server's memory and goroutines while there are no guests.
func (d *door) state(when string) error {
	u, err := d.used()
	if err != nil {
		return err
	}
	goroutines, err := d.page("go_goroutines")
	if err != nil {
		return err
	}
	heap, err := d.page("go_memstats_heap_inuse_bytes")
	if err == nil {
		fmt.Printf("%s: %6.1f MB resident, %6.1f MB heap, %4.0f goroutines\n", when, u.memory/1e6, heap/1e6, goroutines)
	}
	return err
}

// comeAndGo keeps this many guests: one comes, presses keys, leaves in one way or another, and the next one comes.
func (d *door) comeAndGo(places int, until time.Time) (int, error) {
	var wg sync.WaitGroup
	came := make([]int, places)
	errs := make([]error, places)
	for i := range places {
		wg.Go(func() {
			for n := i; time.Now().Before(until) && errs[i] == nil; n++ {
				errs[i] = d.visit(n)
				came[i]++
			}
		})
	}
	wg.Wait()
	sum := 0
	for _, n := range came {
		sum += n
	}
	return sum, errors.Join(errs...)
}

func (d *door) visit(n int) error {
	g, err := d.enter()
	if err != nil {
		return err
	}
	defer g.leave()
	if err := g.settle(n); err != nil {
		return err
	}
	for i := range 5 {
		time.Sleep(30 * time.Millisecond)
		if err := g.press(keyAt(i).bytes); err != nil {
			return err
		}
	}
	if n%3 == 0 { // the others just disconnect
		return g.press("\x03")
	}
	return nil
}
