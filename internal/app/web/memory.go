package web

import "sync"

// mostRemembered is how many answers of searches a generation of the memory
// holds: some ten for each tub of each plan that was looked at.
const mostRemembered = 500

// memory keeps the answers of the lids' searches, so that typing in a field
// that moves no hole is answered at once. What was not asked for during one
// generation is forgotten with the next.
type memory struct {
	mu       sync.Mutex
	now, old map[string]any
}

func newMemory() *memory { return &memory{now: map[string]any{}} }

// Find gives what is kept under a key.
func (m *memory) Find(key string) (any, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if found, ok := m.now[key]; ok {
		return found, true
	}
	found, ok := m.old[key]
	if ok {
		m.put(key, found)
	}
	return found, ok
}

// Keep keeps what was found.
func (m *memory) Keep(key string, found any) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.put(key, found)
}

func (m *memory) put(key string, found any) {
	if len(m.now) >= mostRemembered {
		m.old, m.now = m.now, map[string]any{}
	}
	m.now[key] = found
}
