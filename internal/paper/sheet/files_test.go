package sheet_test

import (
	"bytes"
	"compress/zlib"
	"encoding/csv"
	"encoding/xml"
	"flag"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

var update = flag.Bool("update", false, "write the golden files anew")

// streams are the unpacked contents of a PDF's pages, one after the other.
func streams(t *testing.T, pdf []byte) string {
	t.Helper()
	var out strings.Builder
	for _, found := range regexp.MustCompile(`(?s)/FlateDecode[^>]*>>\nstream\n(.*?)\nendstream`).FindAllSubmatch(pdf, -1) {
		r, err := zlib.NewReader(bytes.NewReader(found[1]))
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		out.Write(text)
	}
	return out.String()
}

func TestFilesAgainstTheGoldenOnes(t *testing.T) {
	for name, l := range map[string]sheet.Lid{"heron": heron(), "saltbrook": saltbrook()} {
		for ending, draw := range map[string]func(sheet.Lid) ([]byte, error){
			"svg": sheet.LidSVG, "csv": sheet.LidCSV, "dxf": sheet.LidDXF,
		} {
			got, err := draw(l)
			if err != nil {
				t.Fatal(err)
			}
			path := filepath.Join("testdata", name+"."+ending)
			if *update {
				if err := os.WriteFile(path, got, 0o600); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("%s has changed; look at the drawing, then run with -update", path)
			}
		}
	}
}

func TestSameLidGivesTheSameBytes(t *testing.T) {
	for name, draw := range map[string]func(sheet.Lid) ([]byte, error){
		"svg": sheet.LidSVG, "csv": sheet.LidCSV, "dxf": sheet.LidDXF,
		"pdf": func(l sheet.Lid) ([]byte, error) { return sheet.LidPDF(l, scene.Letter) },
	} {
		first, err := draw(heron())
		if err != nil {
			t.Fatal(err)
		}
		for range 3 {
			if again, _ := draw(heron()); !bytes.Equal(first, again) {
				t.Errorf("%s: the same lid gave other bytes", name)
			}
		}
	}
}

func TestSVGCarriesThePlansCoordinates(t *testing.T) {
	data, err := sheet.LidSVG(heron())
	if err != nil {
		t.Fatal(err)
	}
	type circle struct {
		ID string  `xml:"id,attr"`
		X  float64 `xml:"data-x,attr"`
		Y  float64 `xml:"data-y,attr"`
		CX float64 `xml:"cx,attr"`
		CY float64 `xml:"cy,attr"`
		R  float64 `xml:"r,attr"`
	}
	var drawing struct {
		Width   string   `xml:"width,attr"`
		ViewBox string   `xml:"viewBox,attr"`
		Circles []circle `xml:"circle"`
	}
	if err := xml.Unmarshal(data, &drawing); err != nil {
		t.Fatal(err)
	}
	if want := "0 0 " + strings.TrimSuffix(drawing.Width, "mm") + " "; !strings.HasPrefix(drawing.ViewBox, want) {
		t.Errorf("width %s with viewBox %q is not true scale", drawing.Width, drawing.ViewBox)
	}
	byID := map[string]circle{}
	for _, c := range drawing.Circles {
		byID[c.ID] = c
	}
	first := byID["hole-1"]
	for i, h := range heron().Holes {
		got, ok := byID["hole-"+string(rune('1'+i))]
		if !ok || got.X != h.XMM || got.Y != h.YMM || got.R != h.SizeMM/2 {
			t.Errorf("hole %d is drawn as %+v", h.N, got)
		}
		// Drawn y runs down.
		dx, dy := (got.CX-first.CX)-(got.X-first.X), (got.CY-first.CY)+(got.Y-first.Y)
		if math.Abs(dx)+math.Abs(dy) > 2e-3 {
			t.Errorf("hole %d stands %g, %g mm off its coordinates", h.N, dx, dy)
		}
	}
}

func TestCSVIsReadBack(t *testing.T) {
	data, err := sheet.LidCSV(saltbrook())
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Count(data, []byte("\r\n")) != bytes.Count(data, []byte("\n")) {
		t.Error("RFC 4180 ends each line with CRLF")
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[0], ","); got != "n,x_mm,y_mm,diameter_mm" {
		t.Errorf("the head is %q", got)
	}
	if len(rows) != 6 || rows[1][3] != "76.2" {
		t.Errorf("the rows are %q", rows)
	}
}

// audit reads a DXF with ezdxf, a general library, and prints what it finds.
const audit = `
import sys, ezdxf
doc = ezdxf.readfile(sys.argv[1])
a = doc.audit()
print(doc.dxfversion, "errors", len(a.errors), "fixes", len(a.fixes), "units", doc.header["$INSUNITS"])
for c in doc.modelspace().query('CIRCLE[layer=="HOLES"]'):
    print("hole %.3f %.3f %.3f" % (c.dxf.center.x, c.dxf.center.y, c.dxf.radius))
for p in doc.modelspace().query('POLYLINE[layer=="LID"]'):
    print("lid", len(p), "closed", p.is_closed, "bulges", sum(1 for v in p.vertices if v.dxf.bulge))
for l in doc.modelspace().query('LINE[layer=="CHECK"]'):
    print("check %.3f" % l.dxf.start.distance(l.dxf.end))
print("layers", " ".join(sorted(l.dxf.name for l in doc.layers)))
`

func TestDXFIsReadWithoutErrors(t *testing.T) {
	const python = "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("python3-ezdxf is not there")
		}
		t.Skip("python3-ezdxf is not there")
	}
	l := heron()
	l.Tub, l.Stop = "Ün-odd <name> ⌀", "a reason"
	data, err := sheet.LidDXF(l)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "lid.dxf")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(python, "-c", audit, file).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	for _, want := range []string{
		"AC1009 errors 0 fixes 0 units 4", "hole 60.000 60.000 38.000", "hole 480.000 320.000 38.000",
		"lid 8 closed True bulges 4", "check 100.000", "layers 0 AIR CHECK CLEAR", "HOLES LID SERVICE TEXT",
	} {
		if !strings.Contains(string(out), want) {
			t.Errorf("ezdxf does not find %q in\n%s", want, out)
		}
	}
	if got := strings.Count(string(out), "hole "); got != len(l.Holes) {
		t.Errorf("%d circles on HOLES, want %d", got, len(l.Holes))
	}
}

func TestStopStandsOnEveryPage(t *testing.T) {
	l := heron()
	l.Stop = "the web is 9 mm"
	text := pdfText(t, printed(t, l, scene.A4))
	pages := strings.Split(strings.TrimSuffix(text, "\f"), "\f")
	if len(pages) != 1+sheet.DrawnPages(l, scene.A4) {
		t.Fatalf("%d pages", len(pages))
	}
	for i, page := range pages {
		page = strings.Join(strings.Fields(page), " ")
		if !strings.Contains(page, "do not drill:") || !strings.Contains(page, l.Stop) {
			t.Errorf("page %d does not say 'do not drill: %s'", i+1, l.Stop)
		}
	}
}

func TestEveryDrawnPageSaysHowToPrintAndWhereItLies(t *testing.T) {
	text := pdfText(t, printed(t, saltbrook(), scene.Letter))
	for i, page := range strings.Split(strings.TrimSuffix(text, "\f"), "\f")[1:] {
		page = strings.Join(strings.Fields(page), " ")
		for _, want := range []string{
			"Print at 100 %.", "Measure the four", "Do not drill if they are off.", "100 mm", "4 in = 101.6 mm",
			"Page " + string(rune('1'+i)) + " of 6, row ", "Saltbrook After-School Club (invented)", "Letter",
		} {
			if !strings.Contains(page, want) {
				t.Errorf("page %d does not say %q", i+1, want)
			}
		}
	}
}

func pdfText(t *testing.T, pdf []byte) string {
	t.Helper()
	return tool(t, pdf, "pdftotext", "-raw", "-", "-")
}

// tool is what one of poppler's programs says of a PDF.
func tool(t *testing.T, pdf []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal(name + " is not there (poppler-utils)")
		}
		t.Skip(name + " is not there (poppler-utils)")
	}
	run := exec.Command(name, args...)
	run.Stdin = bytes.NewReader(pdf)
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return string(out)
}

func TestLidThatCannotBeDrawn(t *testing.T) {
	cases := map[string]func(*sheet.Lid){
		"no outline":     func(l *sheet.Lid) { l.Outline = scene.Path{} },
		"open outline":   func(l *sheet.Lid) { l.Outline.Closed = false },
		"too large":      func(l *sheet.Lid) { l.Outline.Vertices[0].X = 1e9 },
		"not a number":   func(l *sheet.Lid) { l.Outline.Vertices[0].X = math.NaN() },
		"hole nowhere":   func(l *sheet.Lid) { l.Holes[0].XMM = math.Inf(1) },
		"hole of size 0": func(l *sheet.Lid) { l.Holes[0].SizeMM = 0 },
	}
	for name, spoil := range cases {
		l := heron()
		spoil(&l)
		if _, err := sheet.LidPDF(l, scene.A4); err == nil {
			t.Errorf("%s: a sheet was drawn", name)
		}
	}
	if _, err := sheet.LidPDF(heron(), scene.Size{Width: 100, Height: 100}); err == nil {
		t.Error("a paper that is neither A4 nor Letter was taken")
	}
}

// Whatever a garden is called, the SVG is well-formed, and the title says it.
func FuzzLidSVG(f *testing.F) {
	f.Add("Heron", "Fernhollow", 60.0)
	f.Add(`<script>"&'`, "\x00\x1b]\xff\ufffe", math.NaN())
	f.Add("☃ 𝄞 \u202e \u0301", "]]>", -1e300)
	f.Fuzz(func(t *testing.T, tub, garden string, x float64) {
		l := heron()
		l.Tub, l.Garden, l.Stop, l.KeepClear[0].Why = tub, garden, garden, tub
		l.Holes[0].XMM = x
		data, err := sheet.LidSVG(l)
		if err != nil {
			return
		}
		decoder := xml.NewDecoder(bytes.NewReader(data))
		for {
			if _, err := decoder.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("not well-formed: %v", err)
			}
		}
		if _, err := sheet.LidDXF(l); err != nil {
			t.Fatal(err)
		}
	})
}
