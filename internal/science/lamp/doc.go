// Package lamp is the light of a shelf bay: what reaches each hole from flat
// diffuse lamps or by a lux meter, the light of a day, its price in power, and
// when it is too little or too much.
package lamp

//go:generate go run rootbell/internal/base/facts/factgen lamp
