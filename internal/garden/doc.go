// Package garden turns a plan into every number, finding and drawing asked
// for: Assess is the one pure way in, and terminal, page and paper show what
// it gives.
package garden
