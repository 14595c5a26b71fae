package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
	"time"
)

// loadPlan are the options of the load command.
type loadPlan struct {
	sessions, compare string
	time              time.Duration
	greedy, own       int
	serve             string
}

// load measures the server with many guests, and for comparison OpenSSH's server, which starts the same program for
// each guest. The guests run on the same machine and use their share of it.
func load(args []string) error {
	var p loadPlan
	f := flag.NewFlagSet("load", flag.ContinueOnError)
	f.StringVar(&p.sessions, "sessions", "50,200,500", "how many guests, one run each")
	f.StringVar(&p.compare, "compare", "50,200", "how many guests of sshd")
	f.DurationVar(&p.time, "time", 30*time.Second, "how long keys are pressed")
	f.IntVar(&p.own, "maps", 50, "guests who each want a map that nobody else wants; 0 for none")
	f.IntVar(&p.greedy, "greedy", 50, "guests beside one who asks for windows as fast as it can; 0 for none")
	f.StringVar(&p.serve, "serve", "", "more flags for the server, with blanks")
	if err := f.Parse(args); err != nil {
		return err
	}
	dir, program, err := built()
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	fmt.Printf("%d processors for server and guests together, load average %s\n", runtime.NumCPU(), machineLoad())
	return p.run(dir, program)
}

func (p *loadPlan) run(dir, program string) error {
	own := func() (*door, error) { return ownDoor(dir, program, strings.Fields(p.serve)...) }
	head()
	runs, err := series("serve", p.sessions, p.time, own)
	if err != nil {
		return err
	}
	beside, err := series("sshd", p.compare, p.time, func() (*door, error) { return sshdDoor(dir, program) })
	if err != nil {
		fmt.Println("sshd is not compared:", err)
	}
	for n, s := range beside {
		if r, ok := runs[n]; ok {
			fmt.Printf("sshd / serve at %d: p50 %.1f ×, p99 %.1f ×, memory %.1f ×, processor %.1f ×\n", n,
				ratio(s.keys.p50, r.keys.p50), ratio(s.keys.p99, r.keys.p99), s.memory/r.memory, s.cpu/r.cpu)
		}
	}
	if p.own > 0 {
		err = errors.Join(err, queued(p.own, own))
	}
	if p.greedy > 0 {
		err = errors.Join(err, beGreedy(p.greedy, p.time, own))
	}
	if errors.Is(err, errNoSSHD) {
		return nil
	}
	return err
}

func ratio(a, b time.Duration) float64 { return float64(a) / float64(b) }

// result is the result of one run.
type result struct {
	keys   figures
	memory float64 // bytes a session
	cpu    float64 // processors used
}

// series makes a run for each number of guests, each with a new server.
func series(name, numbers string, over time.Duration, open func() (*door, error)) (map[int]result, error) {
	all := map[int]result{}
	for _, word := range strings.Split(numbers, ",") {
		if word == "" {
			continue
		}
		n, err := strconv.Atoi(word)
		if err != nil {
			return all, err
		}
		d, err := open()
		if err != nil {
			return all, err
		}
		all[n], err = measure(d, name, n, over)
		d.close()
		if err != nil {
			return all, err
		}
	}
	return all, nil
}

// measure connects n guests to a server, lets them press keys, and prints a row.
func measure(d *door, name string, n int, over time.Duration) (r result, err error) {
	empty, err := d.used()
	if err != nil {
		return r, err
	}
	begin := time.Now()
	guests, err := fill(d, n)
	defer leave(guests)
	if err != nil {
		return r, err
	}
	filled := time.Since(begin)
	time.Sleep(2 * time.Second)
	before, err := d.used()
	if err != nil {
		return r, err
	}
	mine, _ := cpuOf(os.Getpid())
	pressed := time.Now()
	all, err := drive(guests, over)
	if err != nil {
		return r, err
	}
	after, err := d.used()
	if err != nil {
		return r, err
	}
	guestsCPU, _ := cpuOf(os.Getpid())
	took := time.Since(pressed).Seconds()
	r = result{all.sum(onCard, toMap, inMap, toCard), (after.memory - empty.memory) / float64(n),
		(after.cpu - before.cpu).Seconds() / took}
	card, step := all.sum(onCard), all.sum(toMap, inMap)
	fmt.Printf("%-6s %4d  %7s %7s %7s  %7s %7s  %6.0f %6.0f  %5.2f %5.2f  %5.2f %5.2f  %5.1f  %d\n",
		name, n, ms(r.keys.p50), ms(r.keys.p99), ms(r.keys.full), ms(card.p99), ms(step.p99), card.bytes, step.bytes,
		r.memory/1e6, (before.memory-empty.memory)/1e6/float64(n), r.cpu, (guestsCPU-mine).Seconds()/took,
		filled.Seconds(), r.keys.lost)
	return r, nil
}

func head() {
	fmt.Println("key to the first byte of its frame, and p99 of the whole frame, in ms; bytes a key; MB a session " +
		"with keys and at rest;")
	fmt.Println("processors of the server and of the guests; seconds until all were connected; keys without a reply")
	fmt.Printf("%-6s %4s  %7s %7s %7s  %7s %7s  %6s %6s  %5s %5s  %5s %5s  %5s  %s\n", "", "n",
		"p50", "p99", "whole", "card", "map", "card", "map", "MB", "rest", "serve", "guest", "in", "lost")
}

func ms(d time.Duration) string { return fmt.Sprintf("%.1f", float64(d.Microseconds())/1000) }
