// Package floors holds nothing but the test that keeps the program's seven
// floors apart: which package may import which, and what no package below
// internal/app may touch.
package floors
