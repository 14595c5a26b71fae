package deep

import "sync"

// Known caches expensive results for all tests of a package: each is computed once, by the first test that asks. Only
// pure functions of the key belong here, and tests must not change the result.
type Known[K comparable, V any] struct{ answers sync.Map }

type answer[V any] struct {
	once sync.Once
	v    V
	err  error
}

// Of returns the result for a key; the first call computes it.
func (k *Known[K, V]) Of(key K, compute func() (V, error)) (V, error) {
	kept, _ := k.answers.LoadOrStore(key, new(answer[V]))
	a := kept.(*answer[V])
	a.once.Do(func() { a.v, a.err = compute() })
	return a.v, a.err
}
