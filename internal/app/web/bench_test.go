package web_test

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"rootbell/examples"
	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
)

// served is a server for benchmarks, over its own database.
func served(b *testing.B) (base string, st *store.Store) {
	b.Helper()
	st, err := store.Open(context.Background(), filepath.Join(b.TempDir(), "rootbell.db"), moment)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = st.Close() })
	server := httptest.NewUnstartedServer(nil)
	pages, err := web.New(web.Options{Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Hosts: web.HostsOf(server.Listener)})
	if err != nil {
		b.Fatal(err)
	}
	server.Config.Handler = pages
	server.Start()
	b.Cleanup(server.Close)
	return server.URL, st
}

// BenchmarkRecompute is what one waits for while typing on Build: each request
// asks for a plan that nobody asked for before, with quick effort.
func BenchmarkRecompute(b *testing.B) {
	for _, clients := range []int{1, 8} {
		b.Run(fmt.Sprintf("clients=%d", clients), func(b *testing.B) {
			base, st := served(b)
			g, err := st.Create(context.Background(), "x", fernhollow(b), "made", moment)
			if err != nil {
				b.Fatal(err)
			}
			var mu sync.Mutex
			var took []time.Duration
			next := make(chan int)
			var wait sync.WaitGroup
			for range clients {
				wait.Go(func() {
					for n := range next {
						began := time.Now()
						if err := try(base, g.ID, n); err != nil {
							b.Error(err)
							return
						}
						mu.Lock()
						took = append(took, time.Since(began))
						mu.Unlock()
					}
				})
			}
			b.ResetTimer()
			for n := range max(b.N, 40*clients) {
				next <- n
			}
			close(next)
			wait.Wait()
			slices.Sort(took)
			at := func(share float64) float64 {
				return float64(took[min(len(took)-1, int(share*float64(len(took))))]) / float64(time.Millisecond)
			}
			b.ReportMetric(at(0.5), "p50-ms")
			b.ReportMetric(at(0.95), "p95-ms")
			b.ReportMetric(at(1), "worst-ms")
		})
	}
}

// try types the inside length, to a tenth of a millimetre that is new each time.
func try(base, id string, n int) error {
	form := url.Values{"base": {"1"}, "tub": {"Heron"}, "tubs[0].inside.top[0]": {fmt.Sprintf("%.2f", 51+float64(n)*0.01)}}
	response, err := http.PostForm(base+"/g/"+id+"/build/try?effort=quick", form)
	if err != nil {
		return err
	}
	_, err = io.Copy(io.Discard, response.Body)
	_ = response.Body.Close()
	if response.StatusCode != http.StatusOK {
		return fmt.Errorf("status %d", response.StatusCode)
	}
	return err
}

// BenchmarkStart is the first page from an empty database to its first byte:
// opening the database and making the pages included.
func BenchmarkStart(b *testing.B) {
	for b.Loop() {
		base, _ := served(b)
		response, err := http.Get(base + "/")
		if err != nil {
			b.Fatal(err)
		}
		_, _ = response.Body.Read(make([]byte, 1))
		_ = response.Body.Close()
	}
}

// BenchmarkPages is every page of a garden once it has been opened, and what it
// weighs: as it is, and as it travels.
func BenchmarkPages(b *testing.B) {
	base, _ := served(b)
	for _, page := range []string{"/", "/g/example-fernhollow/build", "/g/example-fernhollow/mix", "/g/example-fernhollow/season", "/g/example-fernhollow/working", "/g/example-fernhollow/papers", "/g/example-fernhollow/text", "/safety", "/stored"} {
		b.Run(page, func(b *testing.B) {
			plain, travels := 0, 0
			for b.Loop() {
				plain = weigh(b, base+page, false)
			}
			travels = weigh(b, base+page, true)
			b.ReportMetric(float64(plain)/1000, "kB")
			b.ReportMetric(float64(travels)/1000, "kB-sent")
		})
	}
}

func weigh(b *testing.B, address string, squeezed bool) int {
	b.Helper()
	r, err := http.NewRequestWithContext(context.Background(), http.MethodGet, address, nil)
	if err != nil {
		b.Fatal(err)
	}
	r.Header.Set("Accept-Encoding", "identity")
	if squeezed {
		r.Header.Set("Accept-Encoding", "gzip")
	}
	response, err := http.DefaultClient.Do(r)
	if err != nil {
		b.Fatal(err)
	}
	defer func() { _ = response.Body.Close() }()
	n, err := io.Copy(io.Discard, response.Body)
	if err != nil {
		b.Fatal(err)
	}
	return int(n)
}

func fernhollow(tb testing.TB) []byte {
	tb.Helper()
	text, err := examples.Plans.ReadFile("fernhollow.yaml")
	if err != nil {
		tb.Fatal(err)
	}
	return text
}
