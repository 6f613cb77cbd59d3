package web

import (
	"crypto/sha256"
	"sync"
)

// fingerprint stands for what an answer depends on.
type fingerprint = [sha256.Size]byte

// mostKept is how many answers are kept: a class has a garden or two, and each
// of them the few plans of the last minutes.
const mostKept = 32

// recent keeps the last answers by what they depend on.
type recent[T any] struct {
	mu    sync.Mutex
	kept  map[fingerprint]T
	order []fingerprint // oldest first
}

func newRecent[T any]() *recent[T] { return &recent[T]{kept: map[fingerprint]T{}} }

// find gives the answer under the first of the keys that has one.
func (k *recent[T]) find(keys ...fingerprint) (found T, ok bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	for _, key := range keys {
		if found, ok = k.kept[key]; ok {
			return found, true
		}
	}
	return found, false
}

func (k *recent[T]) keep(key fingerprint, answer T) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if _, known := k.kept[key]; !known {
		k.order = append(k.order, key)
	}
	k.kept[key] = answer
	if len(k.order) > mostKept {
		delete(k.kept, k.order[0])
		k.order = k.order[1:]
	}
}
