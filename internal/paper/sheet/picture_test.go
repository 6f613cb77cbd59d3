package sheet_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"rootbell/internal/paper/scene"
)

// perMM is the pixels a millimetre takes at 508 dpi: poppler moves thin lines to
// whole pixels, so a pixel must be well under a tenth of a millimetre.
const perMM = 20

// picture is a rendered page in grey.
type picture struct {
	width, height int
	grey          []byte
}

// rendered are the pages of a PDF as poppler draws them.
func rendered(t *testing.T, pdf []byte, dpi float64) []picture {
	t.Helper()
	tool, err := exec.LookPath("pdftoppm")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftoppm is not there (poppler-utils)")
		}
		t.Skip("pdftoppm is not there (poppler-utils)")
	}
	dir := t.TempDir()
	in := filepath.Join(dir, "in.pdf")
	if err := os.WriteFile(in, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	run := exec.Command(tool, "-gray", "-r", strconv.FormatFloat(dpi, 'f', -1, 64), in, filepath.Join(dir, "page"))
	if out, err := run.CombinedOutput(); err != nil || len(out) > 0 {
		t.Fatalf("pdftoppm: %v: %s", err, out)
	}
	names, _ := filepath.Glob(filepath.Join(dir, "page*.pgm"))
	slices.Sort(names)
	var pages []picture
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, parsePGM(t, data))
	}
	return pages
}

func parsePGM(t *testing.T, data []byte) picture {
	t.Helper()
	var p picture
	var most int
	if _, err := fmt.Fscanf(bytes.NewReader(data), "P5\n%d %d\n%d\n", &p.width, &p.height, &most); err != nil || most != 255 {
		t.Fatalf("not a grey picture: %v", err)
	}
	p.grey = data[len(data)-p.width*p.height:]
	return p
}

// ink is how dark the pixel is that covers a place, 0 to 1. Places are mm from
// the lower left; a page's height in pixels may end in a part of a pixel, so
// heights count from the paper's top.
func (p picture) ink(paper scene.Size, x, y float64) float64 {
	column, row := int(math.Floor(x*perMM)), int(math.Floor((paper.Height-y)*perMM))
	if column < 0 || row < 0 || column >= p.width || row >= p.height {
		return 0
	}
	return 1 - float64(p.grey[row*p.width+column])/255
}

// ridge is where along a step the ink is darkest: the centre of gravity of a
// line that crosses the way, found within reach mm of the place. Ink is
// averaged sideways between near and far mm on both sides.
func ridge(ink func(scene.Point) float64, at, along scene.Point, reach, near, far float64) float64 {
	aside := scene.Point{X: -along.Y, Y: along.X}
	const step = 0.05
	n := int(math.Round(reach / step))
	profile := make([]float64, 2*n+1)
	for i := range profile {
		here := at.Plus(along.Times(float64(i-n) * step))
		count := 0.0
		for s := near; s <= far; s += 0.1 {
			profile[i] += ink(here.Plus(aside.Times(s))) + ink(here.Minus(aside.Times(s)))
			count += 2
		}
		profile[i] /= count
	}
	floor := slices.Min(profile)
	top := slices.Index(profile, slices.Max(profile))
	sum, moment := 0.0, 0.0
	for i := max(0, top-10); i <= min(2*n, top+10); i++ {
		sum += profile[i] - floor
		moment += (profile[i] - floor) * float64(i-n) * step
	}
	if sum == 0 {
		return math.NaN()
	}
	return moment / sum
}
