// Package booklet sets the papers that are read: the helper card for the adult
// who drills, and the other sheets of the day of building.
package booklet
