// Package ode follows ordinary differential equations through time by the pair
// of Dormand and Prince, orders five and four, with a step that fits the error
// allowed.
package ode
