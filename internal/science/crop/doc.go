// Package crop holds what each crop wants in a classroom tub: litres, room,
// height and the mass it is picked at; and how it grows there from seed to
// harvest (growth.csv, docs/growth.md).
package crop

//go:generate go run rootbell/internal/base/facts/factgen crop
//go:generate go run rootbell/internal/base/facts/factgen crop growth.csv
