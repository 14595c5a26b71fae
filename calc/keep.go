package calc

import "sync"

// keep holds the last answers by what was asked, the oldest leaving first. Sessions share it.
type keep[K comparable, V any] struct {
	most  int
	mu    sync.Mutex
	order []K
	list  map[K]V
}

func (k *keep[K, V]) get(key K) (V, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	v, ok := k.list[key]
	return v, ok
}

func (k *keep[K, V]) put(key K, v V) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.list == nil {
		k.list = map[K]V{}
	}
	if _, ok := k.list[key]; !ok {
		k.order = append(k.order, key)
	}
	k.list[key] = v
	if len(k.order) > k.most {
		delete(k.list, k.order[0])
		k.order = k.order[1:]
	}
}
