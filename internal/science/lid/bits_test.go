package lid

import (
	"crypto/sha256"
	"fmt"
	"math"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"testing"

	"rootbell/internal/base/plane"
)

// fingerprint is a hash of the bits of many layouts, before rounding.
func fingerprint(tb testing.TB) string {
	tb.Helper()
	h := sha256.New()
	put := func(l Layout) {
		for _, p := range append(l.Exact, l.Points...) {
			_, _ = fmt.Fprintf(h, "%x %x ", math.Float64bits(p.X), math.Float64bits(p.Y))
		}
		_, _ = fmt.Fprintf(h, "%x\n", math.Float64bits(l.Measured.Spacing))
	}
	r := heron(tb)
	for n := 1; n <= 13; n += 3 {
		put(spread(tb, r, n, Search{Seed: 9}))
		ruled, err := snap(r, n, Ruler{Step: 6.35, Borders: true}, Search{Seed: 9, Effort: 4})
		if err != nil {
			tb.Fatal(err)
		}
		put(ruled.Layout)
		_, _ = fmt.Fprintf(h, "%x\n", math.Float64bits(r.Bound(n).Distance))
	}
	// The test's own sums may differ in the last bit: random lids are rounded.
	for seed := range uint64(3) {
		lid := trial(seed)
		for k, p := range lid.outline {
			lid.outline[k] = whole(p)
		}
		lid.edge, lid.clear = math.Round(lid.edge), math.Round(lid.clear)
		lid.circles[0] = plane.Circle{Centre: whole(lid.circles[0].Centre), Radius: math.Round(lid.circles[0].Radius)}
		lid.ribs[0].A, lid.ribs[0].B = whole(lid.ribs[0].A), whole(lid.ribs[0].B)
		put(spread(tb, lid.region(tb), 7, Search{Seed: seed, Effort: 4}))
	}
	return fmt.Sprintf("%x", h.Sum(nil))
}

func whole(p plane.Point) plane.Point { return plane.Point{X: math.Round(p.X), Y: math.Round(p.Y)} }

const fingerprintOnly = "ROOTBELL_LID_FINGERPRINT"

// A processor that fuses multiplication and addition must not change a bit:
// the same layouts are computed by a build that uses fused instructions.
func TestSameBitsWithFusedMultiplyAdd(t *testing.T) {
	here := fingerprint(t)
	if os.Getenv(fingerprintOnly) != "" {
		fmt.Println("fingerprint", here)
		return
	}
	if runtime.GOARCH != "amd64" {
		t.Skip("the two builds compared are for amd64")
	}
	for _, level := range []string{"v1", "v3"} {
		cmd := exec.Command("go", "test", "-count=1", "-run", "^"+t.Name()+"$", ".")
		cmd.Env = append(os.Environ(), "GOAMD64="+level, fingerprintOnly+"=1")
		cmd.Args = append(cmd.Args, "-v")
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("GOAMD64=%s: %v\n%s", level, err, out)
		}
		_, after, ok := strings.Cut(string(out), "fingerprint ")
		if !ok || len(after) < len(here) || after[:len(here)] != here {
			t.Errorf("GOAMD64=%s computes other bits: %s\nhere %s", level, out, here)
		}
	}
}
