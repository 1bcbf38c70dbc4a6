// Package memo keeps a result with what it was made from, so that it is made again only when that is another.
//
// It owns when a result still holds. It must not know what is kept: who asks names all that the result depends on, in a
// key that can be compared. What is large is in a key by its pointer, and Same keeps the pointer of what did not
// change.
package memo

// A Result is a value and the key it was made from. The zero Result has none. It is for one goroutine at a time.
type Result[K comparable, V any] struct {
	key   K
	value *V
}

// Get gives the value for a key, and makes it if the one that is kept is of another key. As long as the value is kept,
// its pointer is the same one.
func (r *Result[K, V]) Get(key K, make func() V) *V {
	if r.value == nil || r.key != key {
		value := make()
		r.key, r.value = key, &value
	}
	return r.value
}

// Kept gives the value that is kept; nil for none.
func (r *Result[K, V]) Kept() *V { return r.value }

// Key gives the key of the value that is kept.
func (r *Result[K, V]) Key() K { return r.key }

// Same gives what there was before, if it is the same as now.
func Same[T any](before, now *T, same func(before, now *T) bool) *T {
	if before != nil && (before == now || same(before, now)) {
		return before
	}
	return now
}
