package deciding_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/deciding"
	"rootbell/internal/paper/scene"
	"rootbell/internal/science/lid"
)

// priced is an offer with names that a spreadsheet could misread, and prices for
// much of the build.
const priced = `currency: EUR
school: {adult_drills: yes, crops_planned: 4}
prices: {tub: 12, saw: 14, cup: 0.35, pump: 9.5, stone: 2.25, seed: 0.04, electricity: 0.31, cap: 0.4}
offers:
  - {name: "=kit, \"large\"", price: 92.00, delivery: 6.50, per_crop: 9.00, sites: 15, pattern: {rows: 3, columns: 5, pitch: 11 cm}, volume: 17 L, includes: [pump, stone, cups]}
  - {name: "old [tub]/with: a name far longer than thirty-one letters", price: 3, sites: 4, volume: 20 L, past: unknown}
  - {name: "old [tub]/with: a name far longer than thirty-one signs", price: 3, sites: 4, volume: 20 L}
`

func chosen(t *testing.T, system quantity.System, more string) *garden.Assessment {
	t.Helper()
	p, problems := plan.Parse("plan", []byte(plan.Starter(system)+more))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageChoose})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The table is read by the standard's own rules (RFC 4180: CRLF, a quote inside
// quotes doubled, the same number of fields in each line).
func TestTheBudgetIsRFC4180(t *testing.T) {
	a := chosen(t, quantity.Metric, priced)
	text, err := deciding.BudgetCSV(a)
	if err != nil {
		t.Fatal(err)
	}
	body, marked := bytes.CutPrefix(text, []byte("\ufeff"))
	if !marked || bytes.Count(body, []byte("\n")) != bytes.Count(body, []byte("\r\n")) || !bytes.HasSuffix(body, []byte("\r\n")) {
		t.Error("no UTF-8 mark, or a line that does not end in CRLF")
	}
	rows, err := csv.NewReader(bytes.NewReader(body)).ReadAll() // strict: every line has as many fields as the first
	if err != nil {
		t.Fatal(err)
	}
	sums := map[string]float64{}
	empty := 0
	for _, r := range rows[1:] {
		for _, cell := range r {
			if cell != "" && strings.ContainsRune("=+-@", rune(cell[0])) {
				t.Errorf("%q would run as a formula", cell)
			}
		}
		if r[10] == "" {
			empty++
			continue
		}
		v, err := strconv.ParseFloat(r[10], 64)
		if err != nil {
			t.Fatal(err)
		}
		if r[1] == "sum" {
			if math.Abs(v-sums[r[0]]) > 1e-6 || v == 0 {
				t.Errorf("%s: the lines add up to %v, the sum says %v", r[0], sums[r[0]], v)
			}
			continue
		}
		sums[r[0]] += v
	}
	if len(sums) != 4 || empty < 10 {
		t.Errorf("%d options and %d cells without a price", len(sums), empty)
	}
}

// reader prints the workbook as another program reads it: values, and formulas.
const reader = `
import json, sys, openpyxl
out = {}
for what, data in (("values", True), ("formulas", False)):
    book = openpyxl.load_workbook(sys.argv[1], data_only=data)
    out[what] = {s.title: [[c for c in row] for row in s.iter_rows(values_only=True)] for s in book.worksheets}
json.dump(out, sys.stdout)
`

// The workbook is read by openpyxl, which shares nothing with what wrote it: its
// sums are formulas, their kept results are the assessment's, and a name that
// begins with = is a text.
func TestTheWorkbookIsReadByAnotherProgram(t *testing.T) {
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		a := chosen(t, system, priced)
		file, err := deciding.BudgetXLSX(a)
		if err != nil {
			t.Fatal(err)
		}
		again, err := deciding.BudgetXLSX(chosen(t, system, priced))
		if err != nil || !bytes.Equal(file, again) {
			t.Fatalf("the same assessment gives other bytes: %v", err)
		}
		book := readBook(t, file)
		names := 0
		for i := range a.Choose.Offers {
			o := &a.Choose.Offers[i]
			row := book.Values["Side by side"][i+1]
			if row[0] != o.Name || row[3] != float64(o.PlantSites) {
				t.Errorf("side by side it is %v, want %s with %d plants", row, o.Name, o.PlantSites)
			}
			if o.Total != nil && math.Abs(row[5].(float64)-*o.Total) > 1e-9 {
				t.Errorf("%s: the total is kept as %v, want %v", o.Name, row[5], *o.Total)
			}
			if f, is := book.Formulas["Side by side"][i+1][5].(string); !is || !strings.HasPrefix(f, "=") {
				t.Errorf("%s: the total is no formula: %v", o.Name, book.Formulas["Side by side"][i+1][5])
			}
		}
		for name, rows := range book.Values {
			if len([]rune(name)) > 31 {
				t.Errorf("a sheet is called %q", name)
			}
			if name == "Side by side" {
				continue
			}
			names++
			addsUp(t, name, rows)
		}
		if names != len(a.Choose.Offers) {
			t.Errorf("%d sheets for %d options", names, len(a.Choose.Offers))
		}
	}
}

type workbook struct {
	Values, Formulas map[string][][]any
}

func readBook(t *testing.T, file []byte) (book workbook) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "budget.xlsx")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := exec.LookPath("/usr/bin/python3"); err != nil || exec.Command("/usr/bin/python3", "-c", "import openpyxl").Run() != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("python3-openpyxl is missing; run make tools")
		}
		t.Skip("python3-openpyxl is missing; run make tools")
	}
	out, err := exec.Command("/usr/bin/python3", "-c", reader, path).Output()
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(out, &book); err != nil {
		t.Fatal(err)
	}
	return book
}

// addsUp holds the kept result of a sheet's sum against its own lines.
func addsUp(t *testing.T, name string, rows [][]any) {
	t.Helper()
	sum, told := 0.0, 0.0
	for _, r := range rows[1:] {
		v, is := r[8].(float64)
		switch {
		case !is:
		case r[0] != nil:
			sum += v
			if p, ok := r[5].(float64); ok {
				want := p * math.Ceil(r[3].(float64)) * r[7].(float64)
				if r[1] == "electricity" { // metered, to the cent
					want = math.Round(100*p*r[3].(float64)) / 100 * r[7].(float64)
				}
				if math.Abs(want-v) > 1e-6 {
					t.Errorf("%s: %v comes to %v, want %v", name, r[1], v, want)
				}
			}
		default:
			told = v
		}
	}
	if math.Abs(sum-told) > 1e-6 { // of binary fractions: each line is whole cents
		t.Errorf("%s: the lines add up to %v, the sum is kept as %v", name, sum, told)
	}
}

// Every paper of the decision fits its pages in both sizes and unit systems, and
// none names a person.
func TestThePapersOfADecision(t *testing.T) {
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		for _, more := range []string{"", priced, strings.Replace(priced, "adult_drills: yes", "adult_drills: no", 1)} {
			a := chosen(t, system, more)
			for _, size := range []scene.Size{scene.A4, scene.Letter} {
				for _, c := range deciding.Cards(a, "3") {
					file, err := c.PDF(size)
					if err != nil || !bytes.HasPrefix(file, []byte("%PDF-")) {
						t.Fatalf("%s: %v", c.Name, err)
					}
					for _, s := range c.Sheets(size) {
						if len(s.Sections) == 0 || s.Block.Revision != "3" {
							t.Errorf("%s: empty, or without its revision", c.Name)
						}
					}
				}
			}
		}
	}
}

func TestAnUnchosenGardenHasNoSuchPapers(t *testing.T) {
	p, _ := plan.Parse("plan", []byte(plan.Starter(quantity.Metric)))
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1})
	if err != nil || len(deciding.Cards(a, "")) != 0 {
		t.Error(fmt.Sprint(err), "papers of a decision that was not asked for")
	}
}

// Where the school says no to eating, the letter asks for no leave to eat and
// names no day of a meal.
func TestTheLetterAsksOnlyForWhatMayBe(t *testing.T) {
	for kitchen, eats := range map[string]bool{"yes": true, "ask": true, "no": false} {
		a := chosen(t, quantity.Metric, "school: {site: {kitchen: "+kitchen+"}, meal: {day: 2027-03-24}}\n")
		for _, c := range deciding.Cards(a, "") {
			if c.Name != "parents-letter.pdf" {
				continue
			}
			var lines strings.Builder
			for _, s := range c.Sheets(scene.A4)[0].Sections {
				for _, l := range s.Lines {
					lines.WriteString(string(l) + "\n")
				}
			}
			if asks := strings.Contains(lines.String(), "may eat") && strings.Contains(lines.String(), "meal is planned"); asks != eats || !eats && strings.Contains(lines.String(), "eat") {
				t.Errorf("the kitchen says %s: %s", kitchen, lines.String())
			}
		}
	}
}
