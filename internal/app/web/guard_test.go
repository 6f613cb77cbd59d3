package web_test

import (
	"bytes"
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
)

// ask sends one request as it is, without following where it leads.
func (o *opened) ask(change func(*http.Request), method, address, body string) *http.Response {
	o.Helper()
	r, err := http.NewRequestWithContext(context.Background(), method, o.base+address, strings.NewReader(body))
	if err != nil {
		o.Fatal(err)
	}
	if body != "" {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	change(r)
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	response, err := client.Do(r)
	if err != nil {
		o.Fatal(err)
	}
	o.Cleanup(func() { _ = response.Body.Close() })
	return response
}

func TestOnlyThisMachinesNamesAreAnswered(t *testing.T) {
	o := open(t)
	own, err := url.Parse(o.base)
	if err != nil {
		t.Fatal(err)
	}
	for host, want := range map[string]int{
		own.Host:                     http.StatusOK,
		"localhost:" + own.Port():    http.StatusOK,
		"evil.example:" + own.Port(): http.StatusMisdirectedRequest,
		"evil.example":               http.StatusMisdirectedRequest,
		"127.0.0.1:1":                http.StatusMisdirectedRequest,
		"":                           http.StatusOK, // the client fills in the address
	} {
		response := o.ask(func(r *http.Request) { r.Host = host }, http.MethodGet, "/", "")
		if response.StatusCode != want {
			t.Errorf("host %q: status %d, want %d", host, response.StatusCode, want)
		}
	}
}

func TestAnotherSiteChangesNothing(t *testing.T) {
	o := open(t)
	for name, header := range map[string][2]string{
		"by its origin":             {"Origin", "https://evil.example"},
		"by what the browser tells": {"Sec-Fetch-Site", "cross-site"},
	} {
		response := o.ask(func(r *http.Request) { r.Header.Set(header[0], header[1]) }, http.MethodPost, "/begin", begun["metric"].Encode())
		if response.StatusCode != http.StatusForbidden {
			t.Errorf("%s: status %d, want %d", name, response.StatusCode, http.StatusForbidden)
		}
	}
	gardens, err := o.store.Gardens(context.Background())
	if err != nil || len(gardens) > 0 {
		t.Errorf("another site made a garden: %v %v", gardens, err)
	}
}

func TestEveryAnswerIsGuarded(t *testing.T) {
	o := open(t)
	for _, address := range []string{"/", "/g/example-fernhollow/build", "/nowhere", "/g/nowhere/build", "/own/x/y.js"} {
		h := o.ask(func(*http.Request) {}, http.MethodGet, address, "").Header
		policy := h.Get("Content-Security-Policy")
		if !strings.Contains(policy, "default-src 'none'") || strings.Contains(policy, "unsafe") || !strings.Contains(policy, "frame-ancestors 'none'") {
			t.Errorf("%s: policy %q", address, policy)
		}
		for name, want := range map[string]string{"X-Content-Type-Options": "nosniff", "X-Frame-Options": "DENY", "Referrer-Policy": "same-origin"} {
			if h.Get(name) != want {
				t.Errorf("%s: %s is %q, want %q", address, name, h.Get(name), want)
			}
		}
	}
}

func TestTooLongAFormIsRefused(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	long := "base=1&text=" + strings.Repeat("x", 2<<20)
	response := o.ask(func(*http.Request) {}, http.MethodPost, "/g/"+id+"/text", long)
	if response.StatusCode != http.StatusRequestEntityTooLarge {
		t.Errorf("status %d, want %d", response.StatusCode, http.StatusRequestEntityTooLarge)
	}
}

func TestOnlyLoopbackIsListenedOn(t *testing.T) {
	for _, address := range []string{"0.0.0.0:0", "192.0.2.1:0", "[::]:0", ":0", "example.org:0", "nonsense"} {
		if l, err := web.Listen(context.Background(), address); err == nil {
			_ = l.Close()
			t.Errorf("%s was taken", address)
		}
	}
	l, err := web.Listen(context.Background(), "localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	_ = l.Close()
}

// TestAStopLetsAnswersBeFinished stops the server while an answer is given.
func TestAStopLetsAnswersBeFinished(t *testing.T) {
	l, err := web.Listen(context.Background(), "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	began, finish := make(chan struct{}), make(chan struct{})
	served := make(chan error, 1)
	go func() {
		served <- web.Serve(ctx, l, http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
			close(began)
			<-finish
			_, _ = w.Write([]byte("whole"))
		}))
	}()
	got := make(chan string, 1)
	go func() {
		response, err := http.Get("http://" + l.Addr().String())
		if err != nil {
			got <- err.Error()
			return
		}
		var b bytes.Buffer
		_, _ = b.ReadFrom(response.Body)
		_ = response.Body.Close()
		got <- b.String()
	}()
	<-began
	stop()
	close(finish)
	if text := <-got; text != "whole" {
		t.Errorf("the answer was cut: %q", text)
	}
	if err := <-served; err != nil && !errors.Is(err, http.ErrServerClosed) {
		t.Error(err)
	}
}

// FuzzForms posts anything to every form. Nothing may panic, and every answer is
// a page with a status of its own.
func FuzzForms(f *testing.F) {
	addresses := []string{"/begin", "/begin/try", "/view", "/import", "/g/%s/build", "/g/%s/build/try?effort=quick", "/g/%s/merge", "/g/%s/text", "/g/%s/history/1/back", "/g/%s/class", "/g/%s/wipe"}
	seeds := []string{
		begun["metric"].Encode(), begun["us"].Encode(),
		"base=1&tub=Tub-1&tubs[0].inside.height=27&holes=0&hole.1.x=9&hole.1.y=9&hole.1.fixed=yes",
		"base=1&tub=Tub-1&do=keep&keep.shape=circle&keep.right=1&keep.up=1&keep.long=\"",
		"base=1&mine.0.path=tubs[0].lid&mine.0.typed={&mine.0.whole=yes", "base=1&text=rootbell: 1", "units=us&back=//x", "base=-1", "%zz",
		"base=1&school.pupils=20&class.wanted=3 and 7;x-9&class.never=1&class.job.0.name=look&class.job.0.from=soon&class.ages=8 to&class.away.week=[", "sure=1", "base=1&do=there-0",
	}
	for i := range addresses {
		for _, seed := range seeds {
			f.Add(i, seed)
		}
	}
	st, err := store.Open(context.Background(), f.TempDir()+"/rootbell.db", moment)
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(func() { _ = st.Close() })
	pages, err := web.New(web.Options{Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Hosts: []string{"localhost"}})
	if err != nil {
		f.Fatal(err)
	}
	g, err := st.Create(context.Background(), "x", []byte(plainPlan), "made", moment)
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, which int, body string) {
		address := strings.ReplaceAll(addresses[abs(which)%len(addresses)], "%s", g.ID)
		r := httptest.NewRequest(http.MethodPost, "http://localhost"+address, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, r)
		if w.Code == http.StatusInternalServerError {
			t.Errorf("%s %q: %d\n%s", address, body, w.Code, head(w.Body.String()))
		}
	})
}

// An answer that takes longer than it may is given up in words, so that a page
// never hangs.
func TestAnAnswerThatTakesTooLongIsGivenUp(t *testing.T) {
	st, err := store.Open(context.Background(), t.TempDir()+"/rootbell.db", moment)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = st.Close() }()
	pages, err := web.New(web.Options{Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Hosts: []string{"localhost"}, Longest: 1})
	if err != nil {
		t.Fatal(err)
	}
	w := httptest.NewRecorder()
	pages.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "http://localhost/g/example-fernhollow/season", nil))
	if w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), "Nothing was changed") {
		t.Errorf("%d %s", w.Code, head(w.Body.String()))
	}
}

func abs(n int) int {
	if n < 0 {
		return -(n + 1)
	}
	return n
}

const plainPlan = `rootbell: 1
garden: x
tubs:
  - name: Tub 1
    inside: {top: [30 cm, 20 cm], base: [28 cm, 18 cm], height: 15 cm}
    lid: {size: [31 cm, 21 cm]}
    cup: {body: 50 mm, rim: 56 mm, depth: 50 mm}
`
