//go:build !race

package web_test

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// many are so many readings of two tubs, a hundred a day up to the tests' day,
// one in fifty corrected: a logbook that is longer than any school's.
func many(n int) []reading.Row {
	out := make([]reading.Row, 0, n)
	all := n * 50 / 51 // without the corrections
	for i := 0; len(out) < n; i++ {
		ph := 5.8 + float64(i%7)/10
		r := reading.Row{
			ID: fmt.Sprint("many-", i), Tub: []string{"Heron", "Otter"}[i%2], By: "Jade", At: moment.Add(time.Duration(i-all) * 864 * time.Second),
			PH:    reading.PH{Read: quantity.Interval[quantity.PH]{Low: quantity.PH(ph), High: quantity.PH(ph), Text: fmt.Sprintf("%.1f", ph)}, With: reading.Meter},
			EC:    reading.EC{Read: quantity.Interval[quantity.MSPerCM]{Low: 1.46, High: 1.46, Text: "1.46"}, With: reading.Meter, Scale: reading.MilliSiemens},
			Water: quantity.Typed[quantity.DegC]{Value: 20.4, Text: "20.4"}, Level: reading.Level{Litres: quantity.Typed[quantity.L]{Value: quantity.L(22 + float64(i%30)/10), Text: fmt.Sprintf("%.1f", 22+float64(i%30)/10)}},
			Seen: "one yellow leaf, hole 4",
		}
		out = append(out, r)
		if i%50 == 0 && len(out) < n {
			out = append(out, r.Correction(r.ID+"-again"))
		}
	}
	return out
}

// BenchmarkPagesOfManyReadings asks for every page of a garden with 100,000
// readings and reports how long 19 of 20 answers take at most, against the
// 150 ms that none should take longer than.
func BenchmarkPagesOfManyReadings(b *testing.B) {
	const readings = 100_000
	path := filepath.Join(b.TempDir(), "rootbell.db")
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		b.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	id := gardenIn(b, st)
	if _, err := st.AddReadings(context.Background(), id, many(readings), moment); err != nil {
		b.Fatal(err)
	}
	server := httptest.NewUnstartedServer(nil)
	pages, err := web.New(web.Options{Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Version: "test", Data: path, Hosts: web.HostsOf(server.Listener)})
	if err != nil {
		b.Fatal(err)
	}
	server.Config.Handler = pages
	server.Start()
	defer server.Close()
	deep := moment.AddDate(-1, 0, 0).UnixMilli()
	for _, page := range [][2]string{
		{"start", "/"},
		{"build", "/g/" + id + "/build"},
		{"today", "/g/" + id + "/today"},
		{"logbook", "/g/" + id + "/logbook"},
		{"correct", "/g/" + id + "/logbook?correct=many-90000"},
		{"all", "/g/" + id + "/logbook/all"},
		{"deep", fmt.Sprintf("/g/%s/logbook/all?tub=Otter&before=%d.1", id, deep)},
		{"charts", "/g/" + id + "/logbook/charts"},
		{"working", "/g/" + id + "/working"},
		{"papers", "/g/" + id + "/papers"},
		{"text", "/g/" + id + "/text"},
		{"history", "/g/" + id + "/history"},
		{"post", ""},
	} {
		name, address := page[0], page[1]
		b.Run(name, func(b *testing.B) {
			var took []time.Duration
			for i := range max(b.N, 40) {
				start := time.Now()
				if name == "post" {
					if !send(server.Client(), server.URL+"/g/"+id+"/logbook", fmt.Sprint("bench-", b.N, "-", i)) {
						b.Fatal("it is not taken")
					}
				} else {
					fetch(b, server.URL+address)
				}
				took = append(took, time.Since(start))
			}
			slices.Sort(took[1:])
			p95 := took[1+(len(took)-1)*95/100]
			b.ReportMetric(float64(p95)/float64(time.Millisecond), "p95-ms") // 150 is the bound
		})
	}
}

func fetch(b *testing.B, address string) {
	response, err := http.Get(address)
	if err != nil {
		b.Fatal(err)
	}
	body, err := io.ReadAll(response.Body)
	_ = response.Body.Close()
	if err != nil || response.StatusCode != http.StatusOK || len(body) == 0 {
		b.Fatalf("%s: %d %v", address, response.StatusCode, err)
	}
}
