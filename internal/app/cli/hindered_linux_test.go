package cli_test

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

// hinderedPrograms are the program on a machine that hinders it in ways that
// root cannot be hindered in by permissions alone.
func hinderedPrograms() map[string]func() {
	return map[string]func(){
		"rootbell-short-of-disk": shortOfDisk,
		"rootbell-as-nobody":     asNobody,
	}
}

// shortOfDisk refuses, like a full disk in the middle of the work, every byte
// of a file over 20,000: the small papers can be written, the large cannot.
func shortOfDisk() {
	const most = 20_000
	signal.Ignore(syscall.SIGXFSZ)
	limit := syscall.Rlimit{Cur: most, Max: most}
	must(syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit))
	run()
}

// asNobody gives up root's rights, so that a folder can be not writable.
func asNobody() {
	const nobody = 65534
	if os.Getuid() == 0 {
		must(syscall.Setgid(nobody))
		must(syscall.Setuid(nobody))
	}
	run()
}

func must(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, "the test's own helper:", err)
		os.Exit(99)
	}
}
