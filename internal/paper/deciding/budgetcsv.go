package deciding

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/school/choose"
)

// BudgetCSV writes every option's budget for a spreadsheet: UTF-8 with its mark,
// CRLF (RFC 4180), and cells that a spreadsheet would take for a formula
// guarded. A price that is not known is an empty cell.
func BudgetCSV(a *garden.Assessment) ([]byte, error) {
	var b bytes.Buffer
	b.Write([]byte{0xEF, 0xBB, 0xBF}) // the mark by which spreadsheets know UTF-8
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	money := ""
	if a.Plan.Currency != "" {
		money = " (" + a.Plan.Currency + ")"
	}
	rows := [][]string{{"option", "part", "item", "what", "size", "count", "unit", "price each" + money, "cost" + money, "times", "cost in all" + money}}
	for i := range a.Choose.Offers {
		o := &a.Choose.Offers[i]
		for _, l := range o.Budget {
			all := ""
			if l.Cost != nil {
				all = cents(quantity.Round(*l.Cost*float64(times(a, l)), 2))
			}
			rows = append(rows, []string{o.Name, l.Part, l.Item, l.What, l.Size, strconv.FormatFloat(l.Count, 'f', -1, 64), l.Unit, price(l.Price), price(l.Cost), strconv.Itoa(times(a, l)), all})
		}
		rows = append(rows, []string{o.Name, "sum", "", sumWords(o), "", "", "", "", "", "", price(o.Total)})
	}
	for _, r := range rows {
		for k := range r {
			r[k] = guarded(r[k])
		}
	}
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func sumWords(o *garden.ChooseOffer) string {
	if o.Priced {
		return "all crops together"
	}
	return "all crops together, as far as priced"
}

// times is how often a line is paid.
func times(a *garden.Assessment, l garden.BudgetLine) int {
	if l.Part == choose.EachCrop {
		return a.Choose.Crops
	}
	return 1
}

func price(v *float64) string {
	if v == nil {
		return ""
	}
	return cents(*v)
}

// cents writes an amount to the cent, and a price that has more digits with
// them all.
func cents(v float64) string {
	if r := quantity.Round(v, 2); math.Abs(r-v) < 1e-9 {
		return strconv.FormatFloat(r, 'f', 2, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// guarded keeps a spreadsheet from running a cell as a formula.
func guarded(cell string) string {
	if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return "'" + cell
	}
	return cell
}
