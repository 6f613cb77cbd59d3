package working

import (
	"maps"
	"slices"

	"rootbell/internal/base/quantity"
)

// Copy is a book with the same numbers, to which more can be added without
// changing the first. It has no scope.
func (b *Book) Copy() *Book {
	return &Book{pages: &pages{numbers: slices.Clone(b.pages.numbers), at: maps.Clone(b.pages.at)}}
}

// Noted enters what somebody read or wrote down elsewhere than in the plan;
// source says where and when. errorBase is as for Typed.
func (b *Book) Noted(key, name, symbol string, kind quantity.Kind, base, errorBase float64, source string) Number {
	n := Number{Key: key, Name: name, Symbol: symbol, Kind: kind, Base: base, Basis: AsTyped, Source: source}
	if errorBase > 0 && errorBase <= most {
		n.spread = []effect{{b.Key(key), errorBase}}
	}
	return b.put(n)
}
