//go:build !linux

package cli_test

// hinderedPrograms are none here: their scripts run on Linux alone.
func hinderedPrograms() map[string]func() { return nil }
