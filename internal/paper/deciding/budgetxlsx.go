package deciding

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"rootbell/internal/garden"
)

// BudgetXLSX writes every option's budget as a workbook: a sheet with the
// options side by side, then a sheet for each. Costs and sums are formulas with
// their results, so that a price filled in later is added up. The same
// assessment gives the same bytes.
func BudgetXLSX(a *garden.Assessment) ([]byte, error) {
	f := excelize.NewFile()
	book := workbook{f: f, a: a}
	if err := book.styles(); err != nil {
		return nil, err
	}
	if err := f.SetSheetName("Sheet1", "Side by side"); err != nil {
		return nil, err
	}
	taken := map[string]bool{"side by side": true}
	for i := range a.Choose.Offers {
		o := &a.Choose.Offers[i]
		name := sheetName(o.Name, taken)
		if _, err := f.NewSheet(name); err != nil {
			return nil, err
		}
		place, err := book.option(name, o)
		if err != nil {
			return nil, err
		}
		book.places = append(book.places, place)
	}
	if err := book.summary("Side by side"); err != nil {
		return nil, err
	}
	if err := f.SetDocProps(&excelize.DocProperties{Title: "Budget: " + a.Garden, Created: epoch, Modified: epoch}); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	return sorted(out.Bytes())
}

// sorted writes the parts of a workbook in the order of their names, the list
// of content types first: the library leaves the order of the sheets to chance.
func sorted(file []byte) ([]byte, error) {
	in, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	if err != nil {
		return nil, err
	}
	parts := slices.Clone(in.File)
	slices.SortFunc(parts, func(a, b *zip.File) int { return strings.Compare(a.Name, b.Name) }) // '[' comes before small letters
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, part := range parts {
		if err := copied(w, part); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

func copied(w *zip.Writer, part *zip.File) error {
	from, err := part.Open()
	if err != nil {
		return err
	}
	to, err := w.CreateHeader(&zip.FileHeader{Name: part.Name, Method: zip.Deflate})
	if err == nil {
		_, err = io.Copy(to, from) // it was written a moment ago, by this program
	}
	if closing := from.Close(); err == nil {
		err = closing
	}
	return err
}

// epoch stands for the moment of writing, so that the bytes do not depend on it.
const epoch = "2000-01-01T00:00:00Z"

type workbook struct {
	f           *excelize.File
	a           *garden.Assessment
	head, money int // styles
	places      []place
}

// place is where the sums of an option stand.
type place struct {
	sheet      string
	first, all string // cells of the first crop and of all crops
}

func (b *workbook) styles() (err error) {
	if b.head, err = b.f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}}); err != nil {
		return err
	}
	cash := "0.00"
	b.money, err = b.f.NewStyle(&excelize.Style{CustomNumFmt: &cash})
	return err
}

// sheetName is an option's name as a workbook takes it: at most 31 letters, none
// of \ / ? * [ ] :, and no two alike.
func sheetName(name string, taken map[string]bool) string {
	name = strings.Map(func(r rune) rune {
		if strings.ContainsRune(`\/?*[]:'`, r) {
			return ' '
		}
		return r
	}, name)
	short := func(n int) string {
		r := []rune(strings.TrimSpace(name))
		return strings.TrimSpace(string(r[:min(len(r), n)]))
	}
	out := short(31)
	if out == "" {
		out = "offer"
	}
	for k := 2; taken[strings.ToLower(out)]; k++ {
		end := fmt.Sprintf(" %d", k)
		out = short(31-len(end)) + end
	}
	taken[strings.ToLower(out)] = true
	return out
}

func (b *workbook) heads(money string) []any {
	var out []any
	for _, h := range []string{"part", "what", "size", "count", "unit", "price each" + money, "cost" + money, "times", "cost in all" + money} {
		out = append(out, excelize.Cell{StyleID: b.head, Value: h})
	}
	return out
}

// option writes the sheet of one option.
func (b *workbook) option(name string, o *garden.ChooseOffer) (place, error) {
	w, err := b.f.NewStreamWriter(name)
	if err != nil {
		return place{}, err
	}
	money := ""
	if b.a.Plan.Currency != "" {
		money = " (" + b.a.Plan.Currency + ")"
	}
	for _, column := range []struct {
		n    int
		wide float64
	}{{1, 11}, {2, 46}, {3, 22}, {4, 8}, {5, 7}, {6, 16}, {7, 14}, {8, 7}, {9, 18}} {
		if err := w.SetColWidth(column.n, column.n, column.wide); err != nil {
			return place{}, err
		}
	}
	rows := [][]any{b.heads(money)}
	for _, l := range o.Budget {
		rows = append(rows, b.line(l, len(rows)+1))
	}
	last := len(rows)
	at := place{sheet: name, first: fmt.Sprintf("I%d", last+2), all: fmt.Sprintf("I%d", last+3)}
	sum := func(words, formula string, v *float64) []any {
		row := make([]any, 9)
		row[1], row[8] = excelize.Cell{StyleID: b.head, Value: words}, excelize.Cell{StyleID: b.money, Formula: formula, Value: amount(v)}
		return row
	}
	rows = append(
		rows, make([]any, 9),
		sum("first outlay with the first crop", fmt.Sprintf(`SUMIFS(G2:G%d,A2:A%d,"once")+SUMIFS(G2:G%d,A2:A%d,"each crop")`, last, last, last, last), o.FirstCrop),
		sum(fmt.Sprintf("all %d crops", b.a.Choose.Crops), fmt.Sprintf("SUM(I2:I%d)", last), o.Total),
	)
	for i, row := range rows {
		if err := w.SetRow(fmt.Sprintf("A%d", i+1), row); err != nil {
			return place{}, err
		}
	}
	return at, w.Flush()
}

func amount(v *float64) any {
	if v == nil {
		return 0
	}
	return *v
}

// line is one line of a budget in row n. Electricity is metered, all else is
// bought in whole pieces.
func (b *workbook) line(l garden.BudgetLine, n int) []any {
	comes := fmt.Sprintf("F%d*ROUNDUP(D%d,0)", n, n)
	if l.Item == "electricity" {
		comes = fmt.Sprintf("ROUND(F%d*D%d,2)", n, n)
	}
	var each, cost, all any = nil, "", ""
	if l.Price != nil {
		each = excelize.Cell{StyleID: b.money, Value: *l.Price}
	}
	if l.Cost != nil {
		cost, all = *l.Cost, *l.Cost*float64(times(b.a, l))
	}
	return []any{
		l.Part, l.What, l.Size, l.Count, l.Unit, each,
		excelize.Cell{StyleID: b.money, Formula: fmt.Sprintf(`IF(F%d="","",%s)`, n, comes), Value: cost},
		times(b.a, l),
		excelize.Cell{StyleID: b.money, Formula: fmt.Sprintf(`IF(G%d="","",G%d*H%d)`, n, n, n), Value: all},
	}
}

// summary sets the options side by side.
func (b *workbook) summary(name string) error {
	w, err := b.f.NewStreamWriter(name)
	if err != nil {
		return err
	}
	if err := w.SetColWidth(1, 1, 30); err != nil {
		return err
	}
	if err := w.SetColWidth(2, 9, 18); err != nil {
		return err
	}
	var head []any
	for _, h := range []string{"option", "possible now", "for food", "plants", "first crop", fmt.Sprintf("%d crops", b.a.Choose.Crops), "each plant moved in", "each plant harvested", "lines without a price"} {
		head = append(head, excelize.Cell{StyleID: b.head, Value: h})
	}
	rows := [][]any{head}
	for i := range b.a.Choose.Offers {
		o, at := &b.a.Choose.Offers[i], b.places[i]
		n := len(rows) + 1
		ref := func(cell string) string { return "'" + at.sheet + "'!" + cell }
		var plants any // a blank where that is not known
		if o.Counted() {
			plants = o.PlantSites
		}
		cells := []any{
			o.Name, yes(o.Possible), yes(o.ForFood), plants,
			excelize.Cell{StyleID: b.money, Formula: ref(at.first), Value: amount(o.FirstCrop)},
			excelize.Cell{StyleID: b.money, Formula: ref(at.all), Value: amount(o.Total)},
			nil, nil, len(o.Unknown),
		}
		if o.PerPlanted != nil && o.PerHarvested != nil {
			cells[6] = excelize.Cell{StyleID: b.money, Formula: fmt.Sprintf("F%d/%d", n, o.Planted), Value: *o.PerPlanted}
			cells[7] = excelize.Cell{StyleID: b.money, Formula: fmt.Sprintf("F%d/%g", n, o.Harvested), Value: *o.PerHarvested}
		}
		rows = append(rows, cells)
	}
	for i, row := range rows {
		if err := w.SetRow(fmt.Sprintf("A%d", i+1), row); err != nil {
			return err
		}
	}
	return w.Flush()
}

func yes(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}
