//go:build !race

package web_test

import (
	"context"
	"database/sql"
	"fmt"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	_ "modernc.org/sqlite" // the peer speaks to the same database without us

	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
)

// writers is how many write at once.
const writers = 32

// atOnceDo shares n pieces of work among the writers and gives how long it took.
func atOnceDo(n int, work func(i int)) time.Duration {
	var next atomic.Int64
	var all sync.WaitGroup
	start := time.Now()
	for range writers {
		all.Go(func() {
			for i := int(next.Add(1)); i <= n; i = int(next.Add(1)) {
				work(i)
			}
		})
	}
	all.Wait()
	return time.Since(start)
}

// BenchmarkDurablePosts is readings posted over HTTP by 32 clients, each on the
// disk before its answer, against bare database/sql that inserts as many rows
// of the same text with the same durability from 32 goroutines.
func BenchmarkDurablePosts(b *testing.B) {
	const rows = 1500
	var ours, peer time.Duration
	for i := 0; b.Loop(); i++ {
		ours += postsThroughThePages(b, rows)
		peer += insertsBare(b, rows)
	}
	b.ReportMetric(ours.Seconds()/float64(b.N), "ours-s")
	b.ReportMetric(peer.Seconds()/float64(b.N), "peer-s")
	b.ReportMetric(float64(rows*b.N)/ours.Seconds(), "posts/s")
	b.ReportMetric(0.5, "goal")
	b.ReportMetric(1, "quality") // each of them is on the disk, or the benchmark fails
}

func postsThroughThePages(b *testing.B, rows int) time.Duration {
	path := filepath.Join(b.TempDir(), "rootbell.db")
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		b.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	id := gardenIn(b, st)
	server := httptest.NewUnstartedServer(nil)
	pages, err := web.New(web.Options{Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Version: "test", Data: path, Hosts: web.HostsOf(server.Listener)})
	if err != nil {
		b.Fatal(err)
	}
	server.Config.Handler = pages
	server.Start()
	defer server.Close()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: writers}}
	address := server.URL + "/g/" + id + "/logbook"
	if !send(client, address, "first") {
		b.Fatal("the first is not taken")
	}
	took := atOnceDo(rows, func(i int) {
		if !send(client, address, fmt.Sprint("post-", i)) {
			b.Errorf("post %d is not taken", i)
		}
	})
	client.CloseIdleConnections()
	ids, err := st.ReadingIDs(context.Background(), id)
	if err != nil || len(ids) != rows+1 {
		b.Errorf("%d readings of %d: %v", len(ids), rows+1, err)
	}
	return took
}

func insertsBare(b *testing.B, rows int) time.Duration {
	path := filepath.Join(b.TempDir(), "bare.db")
	db, err := sql.Open("sqlite", "file://"+filepath.ToSlash(path)+"?_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_pragma=busy_timeout(5000)&_txlock=immediate")
	if err != nil {
		b.Fatal(err)
	}
	defer func() { _ = db.Close() }()
	db.SetMaxOpenConns(1)
	if _, err := db.Exec("CREATE TABLE reading (id TEXT NOT NULL PRIMARY KEY, tub TEXT NOT NULL, at_ms BIGINT NOT NULL, cells TEXT NOT NULL)"); err != nil {
		b.Fatal(err)
	}
	cells := entry("x").Encode()
	took := atOnceDo(rows, func(i int) {
		if _, err := db.Exec("INSERT INTO reading (id, tub, at_ms, cells) VALUES ($1, $2, $3, $4)", fmt.Sprint("post-", i), "heron", moment.UnixMilli(), cells); err != nil {
			b.Error(err)
		}
	})
	var n int
	if err := db.QueryRow("SELECT count(*) FROM reading").Scan(&n); err != nil || n != rows {
		b.Errorf("%d rows of %d: %v", n, rows, err)
	}
	return took
}
