package store_test

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"

	"rootbell/internal/app/store"
)

// Eight write at once, half of them as other programs would, each the same
// garden as the others: nobody is turned away, and no change is lost.
func TestEightWritersAndNobodyIsTurnedAway(t *testing.T) {
	const writers, changes = 8, 12
	first := fresh(t)
	stores := []*store.Store{first, first, first, first, reopen(t, first.Path()), reopen(t, first.Path()), reopen(t, first.Path()), reopen(t, first.Path())}
	g := must(first.Create(t.Context(), "Heron", []byte("begun"), "", dawn))(t)
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			for n := range changes {
				if err := addText(t.Context(), stores[w], g.ID, fmt.Sprintf("%d by %d", n, w)); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	latest := must(first.Garden(t.Context(), g.ID))(t)
	if latest.Revision != 1+writers*changes {
		t.Errorf("%d revisions, want %d", latest.Revision, 1+writers*changes)
	}
	seen := map[string]bool{}
	for n := 1; n <= latest.Revision; n++ {
		seen[string(must(first.Revision(t.Context(), g.ID, n))(t).Text)] = true
	}
	if len(seen) != latest.Revision {
		t.Errorf("%d texts in %d revisions", len(seen), latest.Revision)
	}
	sound(t, first)
}

// addText saves a text as the next revision, as often as another was faster.
func addText(ctx context.Context, s *store.Store, id, text string) error {
	g, err := s.Garden(ctx, id)
	if err != nil {
		return err
	}
	for base := g.Revision; ; {
		_, err := s.Save(ctx, id, base, "Heron", []byte(text), "", dawn)
		var c *store.Conflict
		if !errors.As(err, &c) {
			return err
		}
		base = c.Latest.Number
	}
}

// Whoever gives up while waiting is told so, and nothing of it is kept.
func TestGivingUpKeepsNothing(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "", dawn))(t)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := s.Save(ctx, g.ID, 1, "Heron", []byte("two"), "", dawn); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	if _, err := s.Gardens(ctx); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	must(s.Save(t.Context(), g.ID, 1, "Heron", []byte("three"), "", dawn))(t)
}
