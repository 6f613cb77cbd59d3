//go:build linux && !race

package web_test

import (
	"os/signal"
	"strconv"
	"syscall"
	"testing"
)

// hindered keeps this program from writing a file longer than so many bytes, as
// a full disk does.
func hindered(t *testing.T, bytes string) {
	most, err := strconv.ParseUint(bytes, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	signal.Ignore(syscall.SIGXFSZ)
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: most, Max: most}); err != nil {
		t.Fatal(err)
	}
}
