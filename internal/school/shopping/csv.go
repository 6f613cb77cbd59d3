package shopping

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
)

// CSV writes the list for a spreadsheet: UTF-8 with its mark, CRLF (RFC 4180),
// and cells that a spreadsheet would take for a formula guarded.
func CSV(items []Item, currency string) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString("\ufeff")
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	money := "price each"
	total := "total"
	if currency != "" {
		money, total = money+" ("+currency+")", total+" ("+currency+")"
	}
	rows := [][]string{{"item", "what", "count", "unit", "size", "measure before you buy", money, total}}
	for _, i := range items {
		price, sum := "", ""
		if cost, known := i.Total(); known {
			price, sum = strconv.FormatFloat(*i.Price, 'f', 2, 64), strconv.FormatFloat(cost, 'f', 2, 64)
		}
		rows = append(rows, []string{i.Key, i.What, strconv.FormatFloat(i.Count, 'f', -1, 64), i.Unit, i.Size, i.Measure, price, sum})
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

// guarded keeps a spreadsheet from running a cell as a formula.
func guarded(cell string) string {
	if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return "'" + cell
	}
	return cell
}
