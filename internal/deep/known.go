package deep

import "sync"

// Known caches expensive results for all tests of a package: each is computed once, by the first test that asks. Only
// pure functions of the key belong here, and tests must not change the result.
type Known[K comparable, V any] struct{ answers sync.Map }

// Of returns the result for a key; the first call computes it.
func (k *Known[K, V]) Of(key K, compute func() (V, error)) (V, error) {
	kept, _ := k.answers.LoadOrStore(key, sync.OnceValues(compute))
	return kept.(func() (V, error))()
}
