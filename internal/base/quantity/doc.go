// Package quantity holds what people type and read: lengths, volumes, masses
// and the other measures of the garden, in metric and in US customary units.
//
// Every quantity is a distinct Go type over float64, so that a volume cannot
// be passed where a length is meant. The unit a type stores is named in its
// comment. A Kind ties a type to its dimension and to the units and decimals
// in which each unit system shows it.
package quantity
