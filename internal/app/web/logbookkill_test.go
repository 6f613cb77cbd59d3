//go:build !race

package web_test

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"rootbell/examples"
	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
)

// The variables that make the test's own program a server that is killed: the
// database, and what hinders it.
const (
	childData    = "ROOTBELL_TEST_SERVES"
	childHinders = "ROOTBELL_TEST_HINDERED"
)

// TestServesAsAChild is no test by itself: the tests that kill a server run it
// in a program of its own, until it is killed.
func TestServesAsAChild(t *testing.T) {
	path := os.Getenv(childData)
	if path == "" {
		return // only the tests of killed servers run it
	}
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		t.Fatal(err)
	}
	if hinder := os.Getenv(childHinders); hinder != "" {
		hindered(t, hinder)
	}
	server := httptest.NewUnstartedServer(nil)
	pages, err := web.New(web.Options{
		Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Version: "test", Data: path, Hosts: web.HostsOf(server.Listener),
	})
	if err != nil {
		t.Fatal(err)
	}
	server.Config.Handler = pages
	server.Start()
	fmt.Println("serves", server.URL)
	select {} // until it is killed
}

// child is such a server.
type child struct {
	*exec.Cmd
	base string
}

func serveAsChild(t *testing.T, path, hinder string) *child {
	t.Helper()
	c := exec.Command(os.Args[0], "-test.run=^TestServesAsAChild$", "-test.timeout=0")
	c.Env = append(os.Environ(), childData+"="+path, childHinders+"="+hinder)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if base, ok := strings.CutPrefix(lines.Text(), "serves "); ok {
			return &child{c, base}
		}
		t.Log(lines.Text())
	}
	t.Fatal("the child does not serve")
	return nil
}

// kill ends it as kill -9 does.
func (c *child) kill(t *testing.T) {
	t.Helper()
	if err := c.Process.Kill(); err != nil {
		t.Error(err)
	}
	_ = c.Wait() // it was killed
}

// database is a file with one garden, as the program makes it.
func database(t *testing.T, path string) (id string) {
	t.Helper()
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	return gardenIn(t, st)
}

// gardenIn makes the metric example a garden of a database.
func gardenIn(t testing.TB, st *store.Store) (id string) {
	t.Helper()
	text, err := examples.Plans.ReadFile("fernhollow.yaml")
	if err != nil {
		t.Fatal(err)
	}
	g, err := st.Create(context.Background(), "Fernhollow", text, "", moment)
	if err != nil {
		t.Fatal(err)
	}
	return g.ID
}

// classes are many that write into one logbook at once, each as a device that
// keeps what was not acknowledged and sends it again.
type classes struct {
	mu      sync.Mutex
	next    int
	acked   map[string]bool
	pending []string // sent, and no answer came
}

// take is an entry to send: one that waits, else a new one.
func (c *classes) take() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	if n := len(c.pending); n > 0 {
		id := c.pending[n-1]
		c.pending = c.pending[:n-1]
		return id
	}
	c.next++
	return fmt.Sprintf("entry-%d", c.next)
}

func (c *classes) told(id string, stored bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if stored {
		c.acked[id] = true
	} else {
		c.pending = append(c.pending, id)
	}
}

func (c *classes) count() int {
	c.mu.Lock()
	defer c.mu.Unlock()
	return len(c.acked)
}

// until waits until so many are acknowledged, or for some seconds.
func (c *classes) until(n int) {
	for end := time.Now().Add(5 * time.Second); c.count() < n && time.Now().Before(end); {
		time.Sleep(200 * time.Microsecond)
	}
}

// write sends entries until the server is gone.
func (c *classes) write(client *http.Client, address string) {
	for {
		id := c.take()
		stored := send(client, address, id)
		c.told(id, stored)
		if !stored {
			return
		}
	}
}

// send posts one entry as the page's script does, and tells whether it was
// acknowledged.
func send(client *http.Client, address, id string) bool {
	r, err := http.NewRequest(http.MethodPost, address, strings.NewReader(entry(id, "seen", "the entry "+id, "at", "2027-02-10T09:30:00Z").Encode()))
	if err != nil {
		return false
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Accept", "application/json")
	response, err := client.Do(r)
	if err != nil {
		return false
	}
	defer func() { _ = response.Body.Close() }()
	var answer struct {
		ID     string
		Stored bool
	}
	return json.NewDecoder(response.Body).Decode(&answer) == nil && answer.Stored && answer.ID == id
}

// warm asks for the page once, so that the plan is worked out before the
// writers come.
func warm(t *testing.T, client *http.Client, address string) {
	t.Helper()
	response, err := client.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	_ = response.Body.Close()
}

// A server that is killed while many wait for their answer has every reading
// that it acknowledged, none of them twice, and a whole database.
func TestKilledServersLoseNoReading(t *testing.T) {
	const writers = 10
	kills := 200
	if testing.Short() {
		kills = 15
	}
	path := filepath.Join(t.TempDir(), "rootbell.db")
	id := database(t, path)
	random := rand.New(rand.NewPCG(5, 200))
	all := &classes{acked: map[string]bool{}}
	cut, kept := 0, 0
	for kill := range kills {
		c := serveAsChild(t, path, "")
		client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: writers}}
		warm(t, client, c.base+"/g/"+id+"/logbook")
		var done sync.WaitGroup
		for range writers {
			done.Go(func() { all.write(client, c.base+"/g/"+id+"/logbook") })
		}
		all.until(all.count() + random.IntN(3*writers))
		time.Sleep(time.Duration(random.IntN(8000)) * time.Microsecond)
		c.kill(t)
		done.Wait()
		client.CloseIdleConnections()
		cut += len(all.pending)
		kept += all.check(t, path, id, kill%10 == 9 || kill == kills-1)
		if t.Failed() {
			t.Fatalf("after kill %d", kill+1)
		}
	}
	t.Logf("%d kills, %d readings acknowledged, %d writes cut; of these %d had reached the disk and were told as such when they were sent again", kills, len(all.acked), cut, kept)
	if cut < kills || len(all.acked) < kills {
		t.Errorf("%d writes cut and %d acknowledged by %d kills: they did not come in the middle of the work", cut, len(all.acked), kills)
	}
}

// check holds what is in the book against what was acknowledged, and counts the
// entries that wait although they are in the book.
func (c *classes) check(t *testing.T, path, id string, whole bool) (there int) {
	t.Helper()
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	ids, err := st.ReadingIDs(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	inBook := map[string]bool{}
	for _, id := range ids {
		if inBook[id] {
			t.Errorf("%s is there twice", id)
		}
		inBook[id] = true
	}
	for id := range c.acked {
		if !inBook[id] {
			t.Errorf("%s was acknowledged and is not there", id)
		}
	}
	for _, id := range c.pending {
		if inBook[id] {
			there++
		}
	}
	if len(inBook) != len(c.acked)+there {
		t.Errorf("%d readings, %d acknowledged and %d that wait for their answer", len(inBook), len(c.acked), there)
	}
	if whole {
		c.checkRows(t, st, id)
	}
	return there
}

// checkRows reads every row and the whole file.
func (c *classes) checkRows(t *testing.T, st *store.Store, id string) {
	t.Helper()
	rows, err := st.Readings(context.Background(), id, store.Span{})
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range rows {
		if w.Seen != "the entry "+w.ID || w.Number != i+1 {
			t.Errorf("row %d is %+v", i+1, w)
		}
	}
	copied := filepath.Join(t.TempDir(), "whole.db")
	if err := st.Backup(context.Background(), copied); err != nil { // it reads the file from end to end, and checks it
		t.Error(err)
	}
}
