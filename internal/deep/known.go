package deep

import "sync"

// Known holds what is dear to compute and the same each time, for all tests of a package: each answer is computed once,
// by whoever asks first. Only pure functions of the key belong here, and nobody may change what comes out.
type Known[K comparable, V any] struct{ answers sync.Map }

type answer[V any] struct {
	once sync.Once
	v    V
	err  error
}

// Of returns the answer to a key, by compute where nobody asked before.
func (k *Known[K, V]) Of(key K, compute func() (V, error)) (V, error) {
	kept, _ := k.answers.LoadOrStore(key, new(answer[V]))
	a := kept.(*answer[V])
	a.once.Do(func() { a.v, a.err = compute() })
	return a.v, a.err
}
