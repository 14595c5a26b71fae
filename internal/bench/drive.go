package main

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strconv"
	"sync"
	"time"
)

// round are the keys of ten seconds: changes of a setting, moves to another row, and a step on the map. The map is left
// with /, because the key reader waits 50 ms after a lone Esc for more bytes.
var round = [10]key{
	{"right", onCard}, {"down", onCard}, {"up", onCard}, {"left", onCard}, {"down", onCard}, {"up", onCard},
	{"right", onCard},
	{"m", toMap}, {"right", inMap}, {"/", toCard},
}

// keyAt is a guest's n-th key; every other round goes the other way, so that no guest ends at an edge.
func keyAt(n int) key {
	k := round[n%len(round)]
	back := n/len(round)%2 == 1
	switch k.bytes {
	case "up":
		k.bytes = "\x1b[A"
	case "down":
		k.bytes = "\x1b[B"
	case "left", "right":
		if k.bytes = "\x1b[C"; back != (round[n%len(round)].bytes == "left") {
			k.bytes = "\x1b[D"
		}
	}
	return k
}

type key struct {
	bytes string
	kind  int
}

const (
	onCard = iota
	toMap
	inMap
	toCard
	kinds
)

// jobs is the number of different jobs of the guests: two metals in ten gauges.
const jobs = 20

// settle brings a guest to the card of the n-th job and draws its map once.
func (g *guest) settle(n int) error {
	metal := [2]string{"galvanized", "mild-steel"}[n%2]
	if err := g.choose(metal, strconv.Itoa(14+n%jobs/2)); err != nil {
		return err
	}
	if _, err := g.wait("m", "suggested"); err != nil {
		return err
	}
	return g.press("/")
}

// choose types a metal and a thickness and accepts the assumed wire and mode.
func (g *guest) choose(metal, gauge string) error {
	_, err := g.wait(metal+"\r"+gauge+"\r\r\r", "timed") // a key's name on the card
	return err
}

// fill connects n guests, a few at a time.
func fill(d *door, n int) ([]*guest, error) {
	guests := make([]*guest, n)
	errs := make([]error, n)
	var wg sync.WaitGroup
	places := make(chan struct{}, 8)
	for i := range n {
		wg.Go(func() {
			places <- struct{}{}
			defer func() { <-places }()
			if guests[i], errs[i] = d.enter(); errs[i] == nil {
				errs[i] = guests[i].settle(i)
			}
		})
	}
	wg.Wait()
	return guests, errors.Join(errs...)
}

func leave(guests []*guest) {
	for _, g := range guests {
		if g != nil {
			g.leave()
		}
	}
}

// replies are the replies to many keys.
type replies struct {
	of    [kinds][]reply
	mu    sync.Mutex
	fault error
}

// drive lets every guest press a key a second for some time. They start at random moments within a round, so that the
// share on the map is constant; replies before all have started do not count.
func drive(guests []*guest, over time.Duration) (*replies, error) {
	all := new(replies)
	var wg sync.WaitGroup
	random := rand.New(rand.NewPCG(7, 7))
	begin := time.Now()
	from := begin.Add(time.Duration(len(round)) * time.Second)
	for _, g := range guests {
		first := begin.Add(time.Duration(random.Int64N(int64(from.Sub(begin)))))
		wg.Go(func() {
			if err := all.follow(g, first, from, from.Add(over)); err != nil {
				all.mu.Lock()
				all.fault = err
				all.mu.Unlock()
			}
		})
	}
	wg.Wait()
	return all, all.fault
}

// follow presses one guest's keys and reads the reply to each just before the next.
func (all *replies) follow(g *guest, at, from, end time.Time) error {
	for ; at.Before(end); g.keys++ { // continues where the guest stopped
		time.Sleep(time.Until(at))
		counts := !at.Before(from)
		k := keyAt(g.keys)
		if err := g.press(k.bytes); err != nil {
			return err
		}
		at = at.Add(time.Second)
		time.Sleep(time.Until(at.Add(-10 * time.Millisecond)))
		r := g.reply()
		if !counts {
			continue
		}
		all.mu.Lock()
		all.of[k.kind] = append(all.of[k.kind], r)
		all.mu.Unlock()
	}
	return nil
}

// figures summarize replies.
type figures struct {
	keys, lost int
	p50, p99   time.Duration // key to the first byte of its frame
	full       time.Duration // p99 of the whole frame
	bytes      float64       // a key, mean
}

// sum summarizes the replies to some kinds of keys.
func (all *replies) sum(of ...int) (f figures) {
	var first, full []time.Duration
	bytes := 0
	for _, kind := range of {
		for _, r := range all.of[kind] {
			if r.none {
				f.lost++
			}
			first, full = append(first, r.first), append(full, r.full)
			bytes += r.bytes
		}
	}
	if f.keys = len(first); f.keys == 0 {
		return f
	}
	slices.Sort(first)
	slices.Sort(full)
	f.p50, f.p99, f.full = first[f.keys/2], first[f.keys*99/100], full[f.keys*99/100]
	f.bytes = float64(bytes) / float64(f.keys)
	return f
}
