// Package keep keeps slow answers for all sessions of the program. A caller who asks for an answer that is kept gets it
// at once. A caller who asks for one that is being computed waits for that computation, which is given up only when
// nobody waits for it any more. When there are too many answers, the one that was asked for longest ago is dropped.
package keep

import (
	"cmp"
	"context"
	"slices"
	"sync"

	"brazebooth/internal/crew"
)

// Answers holds the answers that were asked for last. The zero value keeps none.
type Answers[K comparable, V any] struct {
	Most    int // how many are kept
	mu      sync.Mutex
	order   []K // the key that was asked for longest ago comes first
	list    map[K]V
	flights map[K]*flight[V]
}

// flight is an answer being computed.
type flight[V any] struct {
	done  chan struct{} // closed when v, err and fault are there
	v     V
	err   error
	fault error // what the computation panicked with
	stop  context.CancelFunc
	told  []*func(float64) // the progress function of each caller who waits
	tell  sync.Mutex
}

// Answer returns the answer that is kept for a key, or waits for compute to find it: for the computation that another
// caller has started, or for a new one. compute gets a context of its own, which is cancelled when nobody waits any
// more, and reports the share done, 0 to 1, to every caller's progress, which may be nil. Errors are those of compute,
// or ctx's once it is cancelled; they are not kept. A panic of compute becomes a panic in each caller.
func (k *Answers[K, V]) Answer(ctx context.Context, key K, progress func(float64),
	compute func(context.Context, func(float64)) (V, error)) (V, error) {
	if progress == nil {
		progress = func(float64) {}
	}
	f := k.join(key, &progress, compute)
	select {
	case <-f.done:
	case <-ctx.Done():
		k.leave(key, f, &progress)
		var none V
		return none, ctx.Err()
	}
	if f.fault != nil {
		panic(f.fault)
	}
	return f.v, cmp.Or(f.err, ctx.Err())
}

// join adds a caller to the computation of a key, or starts one. For a kept answer it is one that has ended.
func (k *Answers[K, V]) join(key K, progress *func(float64),
	compute func(context.Context, func(float64)) (V, error)) *flight[V] {
	k.mu.Lock()
	defer k.mu.Unlock()
	if v, ok := k.list[key]; ok {
		k.touch(key)
		f := &flight[V]{done: make(chan struct{}), v: v}
		close(f.done)
		return f
	}
	if f := k.flights[key]; f != nil {
		f.tell.Lock()
		f.told = append(f.told, progress)
		f.tell.Unlock()
		return f
	}
	ctx, stop := context.WithCancel(context.Background())
	f := &flight[V]{done: make(chan struct{}), stop: stop, told: []*func(float64){progress}}
	if k.flights == nil {
		k.flights, k.list = map[K]*flight[V]{}, map[K]V{}
	}
	k.flights[key] = f
	go k.fly(ctx, key, f, compute)
	return f
}

func (k *Answers[K, V]) fly(ctx context.Context, key K, f *flight[V],
	compute func(context.Context, func(float64)) (V, error)) {
	defer func() {
		if r := recover(); r != nil {
			f.fault = crew.Fault(r)
		}
		k.land(key, f)
	}()
	f.v, f.err = compute(ctx, f.progress)
}

// land keeps a finished answer and releases the callers who wait.
func (k *Answers[K, V]) land(key K, f *flight[V]) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.flights[key] == f {
		delete(k.flights, key)
	}
	if f.err == nil && f.fault == nil {
		k.put(key, f.v)
	}
	f.stop()
	close(f.done)
}

// leave takes a caller off a computation. The last one stops it and waits until it has ended.
func (k *Answers[K, V]) leave(key K, f *flight[V], progress *func(float64)) {
	k.mu.Lock()
	f.tell.Lock()
	f.told = slices.DeleteFunc(f.told, func(p *func(float64)) bool { return p == progress })
	last := len(f.told) == 0
	f.tell.Unlock()
	if last && k.flights[key] == f {
		delete(k.flights, key) // a later caller starts a new one
		f.stop()
	}
	k.mu.Unlock()
	if last {
		<-f.done
	}
}

func (f *flight[V]) progress(done float64) {
	f.tell.Lock()
	defer f.tell.Unlock()
	for _, p := range f.told {
		(*p)(done)
	}
}

// put is called with the lock held.
func (k *Answers[K, V]) put(key K, v V) {
	k.list[key] = v
	k.touch(key)
	if len(k.order) > k.Most {
		delete(k.list, k.order[0])
		k.order = slices.Delete(k.order, 0, 1)
	}
}

// touch moves a key to the end of the order.
func (k *Answers[K, V]) touch(key K) {
	if i := slices.Index(k.order, key); i >= 0 {
		k.order = slices.Delete(k.order, i, i+1)
	}
	k.order = append(k.order, key)
}
