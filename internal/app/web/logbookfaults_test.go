//go:build !race

package web_test

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
)

// Where the disk takes no more, the page says so in words and keeps what was
// typed; what was acknowledged before is there, and with room again the rest is
// written, once. A limit on the length of files stands for the full disk: it
// holds for root too, and needs no mount.
func TestAFullDiskLosesNothingAcknowledged(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("only Linux limits a program's files so")
	}
	path := filepath.Join(t.TempDir(), "rootbell.db")
	id := database(t, path)
	client := &http.Client{}
	c := serveAsChild(t, path, "400000")
	address := c.base + "/g/" + id + "/logbook"
	all := &classes{acked: map[string]bool{}}
	refused := ""
	for n := 0; refused == "" && n < 3000; n++ {
		entryID := all.take()
		stored := send(client, address, entryID)
		all.told(entryID, stored)
		if !stored {
			refused = entryID
		}
	}
	if refused == "" || len(all.acked) < 5 {
		t.Fatalf("%d taken, and the disk is never full", len(all.acked))
	}
	response, err := client.PostForm(address, entry(refused, "seen", "the entry "+refused, "at", "2027-02-10T09:30:00Z"))
	if err != nil {
		t.Fatal(err)
	}
	body := (&opened{T: t}).read(response, address, http.StatusInsufficientStorage)
	wants(t, body, "Not written down", "What you typed is still here", "the entry "+refused, `name="id" value="`+refused+`"`)
	t.Logf("a file-size limit of 400,000 bytes: %d readings were taken before it", len(all.acked))
	c.kill(t)
	all.check(t, path, id, true)

	c = serveAsChild(t, path, "")
	defer c.kill(t)
	address = c.base + "/g/" + id + "/logbook"
	for range all.pending {
		entryID := all.take()
		if !send(client, address, entryID) {
			t.Errorf("with room again %s is not taken", entryID)
		}
		all.told(entryID, true)
	}
	all.check(t, path, id, true)
}

// Two servers on one file, in programs of their own: what is sent to both, by
// many at once, is there once, and nobody is turned away.
func TestTwoServersOnOneFile(t *testing.T) {
	const entries = 150
	path := filepath.Join(t.TempDir(), "rootbell.db")
	id := database(t, path)
	servers := []*child{serveAsChild(t, path, ""), serveAsChild(t, path, "")}
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 8}}
	all := &classes{acked: map[string]bool{}}
	var done sync.WaitGroup
	for _, c := range servers {
		address := c.base + "/g/" + id + "/logbook"
		warm(t, client, address)
		for w := range 4 {
			done.Go(func() {
				for n := w; n < entries; n += 4 {
					entryID := fmt.Sprint("entry-", n)
					if !send(client, address, entryID) {
						t.Errorf("%s was turned away", entryID)
					}
					all.told(entryID, true)
				}
			})
		}
	}
	done.Wait()
	for _, c := range servers {
		c.kill(t)
	}
	all.check(t, path, id, true)
	if len(all.acked) != entries {
		t.Errorf("%d entries of %d", len(all.acked), entries)
	}
}

// The clock of the server jumps back by a day, as when its battery is empty:
// what was written stays, what is written then stands in the book too, and an
// entry of the right moment is asked about, not lost.
func TestTheServersClockJumpsBack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "rootbell.db")
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	id := gardenIn(t, st)
	now := moment
	server := httptest.NewUnstartedServer(nil)
	pages, err := web.New(web.Options{Store: st, Now: func() time.Time { return now }, Zone: time.UTC, Version: "test", Data: path, Hosts: web.HostsOf(server.Listener)})
	if err != nil {
		t.Fatal(err)
	}
	server.Config.Handler = pages
	server.Start()
	defer server.Close()
	o := &opened{t, server.URL, st, &http.Client{}}
	address := "/g/" + id + "/logbook"
	o.post(address, entry("before"), http.StatusOK)
	now = now.Add(-24 * time.Hour)
	o.post(address, entry("after", "ph", "6.2"), http.StatusOK)
	body, _ := o.post(address, entry("device", "at", "2027-02-10T09:40:00Z"), http.StatusUnprocessableEntity)
	wants(t, body, "is still to come", "Keep it as doubtful")
	o.post(address, entry("device", "at", "2027-02-10T09:40:00Z", "answer", answers(body)["Keep it as doubtful"]), http.StatusOK)
	body, _ = o.post(address, entry("before"), http.StatusOK)
	wants(t, body, "It stands there once.")
	var kept []string
	for _, w := range o.readings(id) {
		kept = append(kept, w.ID)
	}
	if strings.Join(kept, " ") != "before after device" {
		t.Errorf("kept: %v", kept)
	}
}
