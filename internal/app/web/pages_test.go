package web_test

import (
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/app/web"
)

// moment is the day on which the tests open the pages.
var moment = time.Date(2027, time.February, 10, 9, 30, 0, 0, time.UTC)

// opened is a server over an empty database, and a browser without script.
type opened struct {
	*testing.T
	base   string
	store  *store.Store
	client *http.Client
}

func open(t *testing.T) *opened {
	t.Helper()
	path := filepath.Join(t.TempDir(), "rootbell.db")
	st, err := store.Open(context.Background(), path, moment)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = st.Close() })
	server := httptest.NewUnstartedServer(nil)
	pages, err := web.New(web.Options{
		Store: st, Now: func() time.Time { return moment }, Zone: time.UTC, Version: "test", Data: path,
		Hosts: web.HostsOf(server.Listener), Longest: 10 * time.Minute, // a busy machine under the race detector is no teacher's
	})
	if err != nil {
		t.Fatal(err)
	}
	server.Config.Handler = pages
	server.Start()
	t.Cleanup(server.Close)
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	return &opened{t, server.URL, st, &http.Client{Jar: jar}}
}

// get opens an address and wants the status.
func (o *opened) get(address string, status int) (body string, header http.Header) {
	o.Helper()
	response, err := o.client.Get(o.base + address)
	if err != nil {
		o.Fatal(err)
	}
	return o.read(response, address, status), response.Header
}

// post sends a form and follows where it leads.
func (o *opened) post(address string, form url.Values, status int) (body, at string) {
	o.Helper()
	response, err := o.client.PostForm(o.base+address, form)
	if err != nil {
		o.Fatal(err)
	}
	return o.read(response, address, status), response.Request.URL.RequestURI()
}

func (o *opened) read(response *http.Response, address string, status int) string {
	o.Helper()
	defer func() { _ = response.Body.Close() }()
	body, err := io.ReadAll(response.Body)
	if err != nil {
		o.Fatal(err)
	}
	if response.StatusCode != status {
		o.Fatalf("%s: status %d, want %d\n%s", address, response.StatusCode, status, head(afterHead(string(body))))
	}
	return string(body)
}

// afterHead is a page from where it says something of its own.
func afterHead(body string) string {
	_, main, ok := strings.Cut(body, `<main`)
	if !ok {
		return body
	}
	if _, alert, ok := strings.Cut(main, `role="alert"`); ok {
		return alert
	}
	return main
}

func head(text string) string { return text[:min(len(text), 600)] }

// begun are the answers to the first page's questions, in each unit system.
var begun = map[string]url.Values{
	"metric": {
		"units": {"metric"}, "paper": {"A4"}, "shape": {"box"},
		"tubs[0].inside.top[0]": {"55"}, "tubs[0].inside.top[1]": {"37"}, "tubs[0].inside.base[0]": {"48"}, "tubs[0].inside.base[1]": {"31.5"}, "tubs[0].inside.height": {"26"},
		"tubs[0].lid.size[0]": {"58"}, "tubs[0].lid.size[1]": {"39"},
		"tubs[0].cup.rim": {"8.6"}, "tubs[0].cup.body": {"7.4"}, "tubs[0].cup.depth": {"7"}, "tubs[0].crop": {"leaf lettuce"},
	},
	"us": {
		"units": {"us"}, "paper": {"Letter"}, "shape": {"box"},
		"tubs[0].inside.top[0]": {"21 1/2"}, "tubs[0].inside.top[1]": {"15"}, "tubs[0].inside.base[0]": {"19"}, "tubs[0].inside.base[1]": {"12.5"}, "tubs[0].inside.height": {"11"},
		"tubs[0].lid.size[0]": {"23"}, "tubs[0].lid.size[1]": {"16 1/4"},
		"tubs[0].cup.rim": {"3 3/8"}, "tubs[0].cup.body": {"2 7/8"}, "tubs[0].cup.depth": {"2 3/4"}, "tubs[0].crop": {"basil"},
	},
}

// beginGarden goes the newcomer's way and gives the new garden's id.
func (o *opened) beginGarden(units string) string {
	o.Helper()
	_, at := o.post("/begin", begun[units], http.StatusOK)
	id, _, ok := strings.Cut(strings.TrimPrefix(at, "/g/"), "/build")
	if !ok {
		o.Fatalf("the first page led to %s", at)
	}
	return id
}

// TestEveryPageAndEveryLink renders every page of every example and of a
// teacher's own garden in both unit systems, and follows every link. Of the
// thousands of workings and lesson sheets that differ by a tub, a number or a
// choice alone, one of each kind of each garden is followed.
func TestEveryPageAndEveryLink(t *testing.T) {
	o := open(t)
	ids := []string{"example-fernhollow", "example-saltbrook", o.beginGarden("metric"), o.beginGarden("us")}
	todo := []string{"/", "/safety", "/stored"}
	for _, id := range ids {
		todo = append(todo, "/g/"+id+"/build")
	}
	seen := map[string]bool{}
	for len(todo) > 0 {
		address := todo[0]
		todo = todo[1:]
		kind := kindOf(address)
		if seen[kind] {
			continue
		}
		seen[kind] = true
		body, header := o.get(address, http.StatusOK)
		if !strings.HasPrefix(header.Get("Content-Type"), "text/html") {
			continue
		}
		o.wellMade(address, body)
		if all := len(body) + o.ownWeight(body); all > 150_000 {
			t.Errorf("%s weighs %d bytes with its style and scripts, more than 150 kB", address, all)
		}
		for _, link := range linkPattern.FindAllStringSubmatch(body, -1) {
			if next := resolve(address, link[1]); next != "" {
				todo = append(todo, next)
			}
		}
	}
	if len(seen) < 200 {
		t.Errorf("only %d addresses were found; links are missing", len(seen))
	}
}

// kindOf is what an address has in common with those that differ by a tub, a
// number or a choice alone.
func kindOf(address string) string {
	path, query, _ := strings.Cut(address, "?")
	switch {
	case strings.Contains(path, "/working/"):
		garden, key, _ := strings.Cut(path, "/working/")
		path = "." + key
		for _, tub := range []string{"Heron", "Otter", "Tern", "Plover", "Tub-1"} {
			path = strings.ReplaceAll(path, "."+tub+".", ".a-tub.")
		}
		return garden + "/working/" + digitPattern.ReplaceAllString(path, "0")
	case strings.Contains(path, "/lessons"), strings.HasSuffix(path, "/trouble"), strings.HasSuffix(path, "/meal"):
		return path
	case strings.HasSuffix(path, "/working") && query != "":
		return path + "?" + digitPattern.ReplaceAllString(query, "0")
	}
	return address
}

var digitPattern = regexp.MustCompile(`[0-9]+`)

var (
	linkPattern   = regexp.MustCompile(`<(?:a|link|script)\b[^>]*?\b(?:href|src)="([^"#]*)[^"]*"`)
	inlinePattern = regexp.MustCompile(`(?i)\sstyle="|\son[a-z]+="|<script>|javascript:|<style`)
	outerPattern  = regexp.MustCompile(`(?i)(?:src|href|action)="(?:https?:)?//`)
	idPattern     = regexp.MustCompile(`\sid="([^"]+)"`)
	forPattern    = regexp.MustCompile(`\s(?:for|aria-describedby)="([^"]+)"`)
)

// resolve is the address that a link on a page leads to; empty for the page
// itself.
func resolve(from, link string) string {
	base, err := url.Parse(from)
	if err != nil {
		return ""
	}
	to, err := base.Parse(strings.ReplaceAll(link, "&amp;", "&"))
	if err != nil || link == "" {
		return ""
	}
	return to.RequestURI()
}

// wellMade checks what the policy forbids and what a reader of the screen needs.
func (o *opened) wellMade(address, body string) {
	o.Helper()
	if found := inlinePattern.FindString(body); found != "" {
		o.Errorf("%s: %q in the page, which the policy forbids", address, found)
	}
	if found := outerPattern.FindString(body); found != "" {
		o.Errorf("%s: %q leads away from this computer", address, found)
	}
	ids := map[string]bool{}
	for _, m := range idPattern.FindAllStringSubmatch(body, -1) {
		if ids[m[1]] {
			o.Errorf("%s: two elements have the id %q", address, m[1])
		}
		ids[m[1]] = true
	}
	for _, m := range forPattern.FindAllStringSubmatch(body, -1) {
		for id := range strings.FieldsSeq(m[1]) {
			if !ids[id] {
				o.Errorf("%s: something names the id %q, which is not there", address, id)
			}
		}
	}
	for _, want := range []string{"<title>", `lang="en"`, "<h1", `id="main"`} {
		if !strings.Contains(body, want) {
			o.Errorf("%s has no %s", address, want)
		}
	}
	for _, wrong := range []string{"ZgotmplZ", "%!", "<no value>", "NaN", "+Inf"} {
		if strings.Contains(body, wrong) {
			o.Errorf("%s has %q in it", address, wrong)
		}
	}
}

// ownWeight is what a page loads besides itself: style, scripts, and the
// scripts that these load.
func (o *opened) ownWeight(body string) int {
	o.Helper()
	seen := map[string]bool{}
	sum := 0
	var load func(address string)
	load = func(address string) {
		if seen[address] {
			return
		}
		seen[address] = true
		text, _ := o.get(address, http.StatusOK)
		sum += len(text)
		for _, m := range importPattern.FindAllStringSubmatch(text, -1) {
			load(resolve(address, m[1]))
		}
	}
	for _, m := range ownPattern.FindAllStringSubmatch(body, -1) {
		load(m[1])
	}
	return sum
}

var (
	ownPattern    = regexp.MustCompile(`(?:href|src)="(/own/[^"]+)"`)
	importPattern = regexp.MustCompile(`from "(\./[^"]+)"`)
)
