package sheet_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// pointMM is one unit of a PDF page, 1/72 in: ISO 32000-1, table 30.
const pointMM = 25.4 / 72

func TestPublishedPaperSizes(t *testing.T) {
	cases := []struct {
		paper         scene.Size
		width, height float64 // points
		source        string
	}{
		{scene.A4, 595.276, 841.890, "ISO 216: 210 × 297 mm, at 72 points an inch"},
		{scene.Letter, 612, 792, "ANSI/ASME Y14.1: 8.5 × 11 in, at 72 points an inch (from memory)"},
	}
	for _, c := range cases {
		pages := pageSizes(t, printed(t, heron(), c.paper))
		if len(pages) != 1+sheet.DrawnPages(heron(), c.paper) {
			t.Errorf("%d pages have a size", len(pages))
		}
		for _, page := range pages {
			width, height := min(page[0], page[1]), max(page[0], page[1])
			// The PDF writer gives hundredths of a point.
			if math.Abs(width-c.width) > 0.005 || math.Abs(height-c.height) > 0.005 {
				t.Errorf("a page of %g × %g points, want %g × %g: %s", width, height, c.width, c.height, c.source)
			}
		}
	}
}

// pageSizes are the sizes of all pages in points, as poppler reads them.
func pageSizes(t *testing.T, pdf []byte) [][2]float64 {
	t.Helper()
	out := tool(t, pdf, "pdfinfo", "-l", "999", "-")
	var sizes [][2]float64
	for _, m := range regexp.MustCompile(`Page +\d+ size: +([0-9.]+) x ([0-9.]+) pts`).FindAllStringSubmatch(out, -1) {
		width, _ := strconv.ParseFloat(m[1], 64)
		height, _ := strconv.ParseFloat(m[2], 64)
		sizes = append(sizes, [2]float64{width, height})
	}
	return sizes
}

func TestPublishedLengths(t *testing.T) {
	// A line of 100 mm takes 283.4646 points: 100/25.4·72, ISO 32000-1 table 30.
	if got := 100 / pointMM; math.Abs(got-283.4646) > 5e-5 {
		t.Errorf("100 mm are %g points", got)
	}
	press := scene.NewPress("line", "")
	press.Page(scene.A4).Draw(scene.Line{From: scene.Point{X: 10, Y: 10}, To: scene.Point{X: 110, Y: 10}})
	pdf, err := press.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	if got := drawnPoints(t, pdf); math.Abs(got-283.4646) > 0.01 {
		t.Errorf("a line of 100 mm is drawn %g points long, want 283.4646", got)
	}
}

func TestPublishedTileCounts(t *testing.T) {
	const computed = "computed: 1 if L <= p, else 1 + ceil((L-p)/(p-o))"
	cases := []struct {
		paper         scene.Size
		margin        float64
		columns, rows int
		source        string
	}{
		{scene.A4, 10, 4, 2, computed},
		{scene.A4.Across(), 10, 3, 3, computed},
		{scene.A4, 5, 3, 2, computed},
		{scene.A4.Across(), 5, 2, 2, computed},
		{scene.Letter, 6.35, 3, 2, computed},
		{scene.Letter.Across(), 6.35, 3, 2, computed},
	}
	for _, c := range cases {
		columns := sheet.TileCount(560, c.paper.Width-2*c.margin, 10)
		rows := sheet.TileCount(380, c.paper.Height-2*c.margin, 10)
		if columns != c.columns || rows != c.rows {
			t.Errorf("560 × 380 mm on %v with a margin of %g mm: %d × %d pages, want %d × %d (%s)",
				c.paper, c.margin, columns, rows, c.columns, c.rows, c.source)
		}
	}
}

func TestPublishedInchMarks(t *testing.T) {
	// An inch is exactly 25.4 mm: international yard and pound agreement, 1959.
	cases := []struct {
		mm   float64
		want string
	}{
		{25.4, "1"},
		{76.2, "3"},
		{12.7, "1/2"},
		{6.35, "1/4"},
		{120.65, "4\u00a03/4"},
		{1.5875, "1/16"},
		{0, "0"},
		{-12.7, "−1/2"},
		{25.4 * 5.99, "6"},
	}
	for _, c := range cases {
		if got := sheet.Mark(c.mm, quantity.US); got != c.want {
			t.Errorf("%g mm is marked %q, want %q", c.mm, got, c.want)
		}
	}
}

// Hole saws are sold in eighths of an inch and stamped with whole mm beside:
// 'source' is what the sum is.
func TestPublishedToolSizes(t *testing.T) {
	for _, c := range []struct {
		mm         float64
		us, source string
	}{
		{76, "3\u00a0in (76\u00a0mm)", "3 × 25.4 = 76.2"},
		{73, "2\u00a07/8\u00a0in (73\u00a0mm)", "2.875 × 25.4 = 73.025"},
		{51, "2\u00a0in (51\u00a0mm)", "2 × 25.4 = 50.8"},
		{32, "1\u00a01/4\u00a0in (32\u00a0mm)", "1.25 × 25.4 = 31.75"},
		{62, "2\u00a07/16\u00a0in (62\u00a0mm)", "no eighth: 2.4409 in, 156.2 sixty-fourths"},
		{75.8, "2\u00a063/64\u00a0in (75.8\u00a0mm)", "typed to 0.1 mm: 190.99 sixty-fourths"},
	} {
		if got := strings.ReplaceAll(sheet.ToolSize(c.mm, quantity.US), " ", "\u00a0"); got != strings.ReplaceAll(c.us, " ", "\u00a0") {
			t.Errorf("%g mm is %q, want %q (%s)", c.mm, got, c.us, c.source)
		}
	}
}

func drawnPoints(t *testing.T, pdf []byte) float64 {
	t.Helper()
	match := regexp.MustCompile(`([0-9.]+) ([0-9.]+) m\n([0-9.]+) ([0-9.]+) l`).FindStringSubmatch(streams(t, pdf))
	if match == nil {
		t.Fatal("the page draws no line")
	}
	var v [4]float64
	for i := range v {
		if _, err := fmt.Sscan(match[i+1], &v[i]); err != nil {
			t.Fatal(err)
		}
	}
	return math.Hypot(v[2]-v[0], v[3]-v[1])
}
