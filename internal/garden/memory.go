package garden

import (
	"context"
	"fmt"
	"slices"

	"rootbell/internal/base/plane"
	"rootbell/internal/science/lid"
)

// Memory keeps what the searches on a lid have found, so that a plan that
// differs elsewhere need not search again. An answer is the same with one and
// without: what a key stands for is all that the answer depends on. It must be
// safe for use by several assessments at once; what it gives back is not to be
// changed.
type Memory interface {
	Find(key string) (found any, ok bool)
	Keep(key string, found any)
}

// remembered is what the memory has under a key, else what is found now. A
// search that was given up is not kept.
func remembered[T any](m Memory, key string, find func() (T, error)) (T, error) {
	if m == nil {
		return find()
	}
	if found, ok := m.Find(key); ok {
		if out, ok := found.(T); ok {
			return out, nil
		}
	}
	out, err := find()
	if err == nil {
		m.Keep(key, out)
	}
	return out, err
}

// searched is a lid's region whose searches are remembered.
type searched struct {
	*lid.Region
	memory Memory
	key    string
}

// searchedRegion makes a region, or takes it from the memory. Its key writes
// out every figure that it is made of.
func searchedRegion(m Memory, bounds []lid.Inset, keepOuts []lid.KeepOut) (searched, error) {
	key := fmt.Sprintf("%#v %#v", bounds, keepOuts)
	r, err := remembered(m, key, func() (*lid.Region, error) { return lid.NewRegion(bounds, keepOuts) })
	return searched{r, m, key}, err
}

func (s searched) asked(what string, parts ...any) string {
	return fmt.Sprintf("%s %#v %s", what, parts, s.key)
}

// MostAt is the region's, remembered.
func (s searched) MostAt(ctx context.Context, distance float64, o lid.Search) (lid.Most, error) {
	return remembered(s.memory, s.asked("most", distance, o), func() (lid.Most, error) { return s.Region.MostAt(ctx, distance, o) })
}

// Optima is the region's, remembered.
func (s searched) Optima(ctx context.Context, n int, o lid.Search) (*lid.Optima, error) {
	return remembered(s.memory, s.asked("optima", n, o), func() (*lid.Optima, error) { return s.Region.Optima(ctx, n, o) })
}

// Snap lays on the ruler what was found for the same n and search.
func (s searched) Snap(ctx context.Context, n int, u lid.Ruler, o lid.Search, found *lid.Optima) (lid.Ruled, error) {
	return remembered(s.memory, s.asked("snap", n, u, o), func() (lid.Ruled, error) { return found.Snap(ctx, u) })
}

// Rows is the region's, remembered.
func (s searched) Rows(ctx context.Context, n int, u lid.Ruler, fixed []plane.Point) (lid.InRows, error) {
	return remembered(s.memory, s.asked("rows", n, u, fixed), func() (lid.InRows, error) {
		return s.Region.Rows(ctx, n, u, slices.Clone(fixed))
	})
}
