package calc

import (
	"context"
	"slices"
	"sync"

	"brazebooth/internal/crew"
)

// keep holds the answers asked for last, by what was asked. All sessions share it: who asks for what is being
// computed already waits for that computation, which is given up only when nobody waits any more.
type keep[K comparable, V any] struct {
	most    int
	mu      sync.Mutex
	order   []K // least recently asked first
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
	told  []*func(float64) // one for each who waits: whom to tell how far it is
	tell  sync.Mutex
}

// answer returns what is kept, what another caller is computing, or what compute finds.
func (k *keep[K, V]) answer(ctx context.Context, key K, progress func(float64),
	compute func(context.Context, func(float64)) (V, error)) (V, error) {
	if v, ok := k.get(key); ok {
		return v, ctx.Err()
	}
	if progress == nil {
		progress = func(float64) {}
	}
	f := k.board(key, &progress, compute)
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
	return f.v, f.err
}

// board joins the flight of a key, or starts it.
func (k *keep[K, V]) board(key K, progress *func(float64),
	compute func(context.Context, func(float64)) (V, error)) *flight[V] {
	k.mu.Lock()
	defer k.mu.Unlock()
	if v, ok := k.list[key]; ok { // it landed since
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
		k.flights = map[K]*flight[V]{}
	}
	k.flights[key] = f
	go k.fly(ctx, key, f, compute)
	return f
}

func (k *keep[K, V]) fly(ctx context.Context, key K, f *flight[V],
	compute func(context.Context, func(float64)) (V, error)) {
	defer func() {
		if r := recover(); r != nil {
			f.fault = crew.Fault(r)
		}
		k.land(key, f)
	}()
	f.v, f.err = compute(ctx, f.progress)
}

// land keeps a finished answer and releases those who waited.
func (k *keep[K, V]) land(key K, f *flight[V]) {
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

// leave takes a caller off a flight; the last one stops it and waits until nothing of it runs.
func (k *keep[K, V]) leave(key K, f *flight[V], progress *func(float64)) {
	k.mu.Lock()
	f.tell.Lock()
	f.told = slices.DeleteFunc(f.told, func(p *func(float64)) bool { return p == progress })
	last := len(f.told) == 0
	f.tell.Unlock()
	if last && k.flights[key] == f {
		delete(k.flights, key) // who asks from now on starts a new one
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

func (k *keep[K, V]) get(key K) (V, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	v, ok := k.list[key]
	if ok {
		k.touch(key)
	}
	return v, ok
}

// put is called with the lock held.
func (k *keep[K, V]) put(key K, v V) {
	if k.list == nil {
		k.list = map[K]V{}
	}
	k.list[key] = v
	k.touch(key)
	if len(k.order) > k.most {
		delete(k.list, k.order[0])
		k.order = slices.Delete(k.order, 0, 1)
	}
}

// touch moves a key to the end of the order.
func (k *keep[K, V]) touch(key K) {
	if i := slices.Index(k.order, key); i >= 0 {
		k.order = slices.Delete(k.order, i, i+1)
	}
	k.order = append(k.order, key)
}
