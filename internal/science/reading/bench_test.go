package reading

import (
	"fmt"
	"testing"
	"time"
)

// logbook is a long one: so many readings, one in twenty corrected.
func logbook(n int) []Row {
	rows := make([]Row, n)
	for i := range rows {
		rows[i] = Row{
			ID: fmt.Sprintf("row-%06d", i), Tub: "Heron", At: monday.Add(time.Duration(i) * time.Hour),
			PH: ph(float64(58+i%7) / 10), EC: ec(float64(24+i%9) / 20), Seen: "roots white",
		}
		if i%20 == 19 {
			rows[i].Corrects, rows[i].At = rows[i-1].ID, rows[i-1].At
		}
	}
	return rows
}

func BenchmarkStanding(b *testing.B) {
	rows := logbook(100_000)
	for b.Loop() {
		if got := len(Standing(rows)); got != 95_000 {
			b.Fatal(got)
		}
	}
}

func BenchmarkThin(b *testing.B) {
	points := Points(Standing(logbook(100_000)), FieldPH, Vessel{})
	for b.Loop() {
		if got := len(Thin(points, 700)); got > 700 || got < 100 {
			b.Fatal(got)
		}
	}
}

func BenchmarkReadCSV(b *testing.B) {
	text, err := CSV(logbook(10_000), time.UTC)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if table, problems := ReadCSV(text, Import{}); len(table.Rows) != 10_000 {
			b.Fatal(problems)
		}
	}
}
