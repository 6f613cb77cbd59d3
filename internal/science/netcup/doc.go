// Package netcup holds the cup, the hole it hangs in, the saws that cut it and
// the distances the hole must keep from everything else on a lid.
package netcup

//go:generate go run rootbell/internal/base/facts/factgen netcup
