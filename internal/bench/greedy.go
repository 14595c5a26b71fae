package main

import (
	"errors"
	"fmt"
	"slices"
	"sync"
	"sync/atomic"
	"time"
)

// queued lets every guest ask at the same time for a map of its own job, so that they wait for each other.
func queued(n int, open func() (*door, error)) error {
	d, err := open()
	if err != nil {
		return err
	}
	defer d.close()
	took := make([]time.Duration, n)
	errs := make([]error, n)
	guests := make([]*guest, n)
	defer func() { leave(guests) }()
	var in, wg sync.WaitGroup
	in.Add(n)
	for i := range n {
		wg.Go(func() {
			guests[i], errs[i] = d.enter()
			if errs[i] == nil {
				errs[i] = guests[i].choose("mild-steel", fmt.Sprintf("%.3fmm", 0.9+float64(i)/500))
			}
			in.Done()
			in.Wait()
			if errs[i] == nil {
				took[i], errs[i] = guests[i].wait("m", "suggested")
			}
		})
	}
	wg.Wait()
	if err := errors.Join(errs...); err != nil {
		return err
	}
	slices.Sort(took)
	fmt.Printf("maps of %d guests at once, each of its own job: first after %.2f s, half after %.2f s, "+
		"last after %.2f s\n", n, took[0].Seconds(), took[n/2].Seconds(), took[n-1].Seconds())
	return nil
}

// beGreedy measures guests without and with another guest who asks for one window after another, each of a new job.
func beGreedy(n int, over time.Duration, open func() (*door, error)) error {
	d, err := open()
	if err != nil {
		return err
	}
	defer d.close()
	guests, err := fill(d, n)
	defer leave(guests)
	if err != nil {
		return err
	}
	alone, err := drive(guests, over)
	if err != nil {
		return err
	}
	var stop atomic.Bool
	greedy := make(chan error, 1)
	windows := 0
	go func() { greedy <- d.windows(&stop, &windows) }()
	beside, err := drive(guests, over)
	stop.Store(true)
	if err = errors.Join(err, <-greedy); err != nil {
		return err
	}
	a, b := alone.sum(onCard, toMap, inMap, toCard), beside.sum(onCard, toMap, inMap, toCard)
	fmt.Printf("%d guests beside one who asks for windows without a pause (%.1f a second): p50 %s to %s ms (%.2f ×), "+
		"p99 %s to %s ms (%.2f ×)\n", n, float64(windows)/over.Seconds(), ms(a.p50), ms(b.p50), ratio(b.p50, a.p50),
		ms(a.p99), ms(b.p99), ratio(b.p99, a.p99))
	return nil
}

// windows asks for maps until it is stopped.
func (d *door) windows(stop *atomic.Bool, count *int) error {
	conn, err := d.dial()
	if err != nil {
		return err
	}
	defer conn.Close()
	for ; !stop.Load(); *count++ {
		s, err := conn.NewSession()
		if err != nil {
			return err
		}
		command := fmt.Sprintf("window --metal mild-steel --gauge %.4fmm --json", 0.8+float64(*count)/5000)
		if _, err := s.Output(command); err != nil {
			return err
		}
	}
	return nil
}
