//go:build !race

package web_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// line cuts the tab's connection, or restores it.
func (b *tab) line(there bool) {
	b.Helper()
	command := cdp.Command[network.OverrideNetworkStateParams, cdp.Empty]{Method: "Network.emulateNetworkConditions"}
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, command, network.OverrideNetworkStateParams{Offline: !there, DownloadThroughput: -1, UploadThroughput: -1})
		return err
	}))
}

// reading types a usual reading and presses the button.
func (b *tab) reading(team, level, ph string) {
	b.Helper()
	b.click(`[name="by"][value="` + team + `"]`)
	b.write("level", level)
	b.write("ph", ph)
	b.write("ec", "1.48")
	b.write("water", "20.5")
	b.click("#entry .btn.first")
}

// waiting is how many entries the device keeps.
func (b *tab) waiting() int {
	b.Helper()
	return ask[int](b, `Object.keys(localStorage).filter((k) => k.startsWith("rootbell entry ")).length`)
}

func TestAReadingOutlastsACutLine(t *testing.T) {
	o := open(t)
	id := o.mine()
	b := browse(t, o.base)
	b.log.mayHear("ERR_INTERNET_DISCONNECTED")
	b.do(chromedp.EmulateViewport(handWide, handHigh))
	b.visit("/g/" + id + "/logbook")
	b.settled()
	b.line(false)
	b.reading("Jade", "22.5", "6.1")
	b.until(`document.getElementById("waits").innerText.includes("One entry waits on this device.")`)
	if text := b.text("#waits"); !strings.Contains(text, "Heron, Wed") || !strings.Contains(text, "Do not type it again.") {
		t.Errorf("the band says %q", text)
	}
	if v := b.value("level"); v != "" {
		t.Errorf("the form still has %q for the next entry", v)
	}
	b.reading("Slate", "21.5", "6.2")
	b.until(`document.getElementById("waits").innerText.includes("2 entries wait on this device.")`)
	if n, kept := len(o.readings(id)), b.waiting(); n != 0 || kept != 2 {
		t.Errorf("%d in the book and %d on the device while the line is cut", n, kept)
	}
	b.line(true)
	b.until(`document.getElementById("waits").hidden && document.getElementById("last").innerText.includes("22.5")`)
	all := o.readings(id)
	if len(all) != 2 || all[0].By != "Jade" || all[0].Level.Litres.Text != "22.5" || all[1].By != "Slate" || b.waiting() != 0 {
		t.Errorf("in the book: %+v, on the device %d", all, b.waiting())
	}
	b.visit("/g/" + id + "/logbook")
	b.settled()
	if ask[bool](b, `!document.getElementById("waits").hidden`) || len(o.readings(id)) != 2 {
		t.Error("an entry that is in the book is sent or shown again")
	}
}

// losing is a line to a server on which the answers to entries get lost while
// it is told to.
func losing(t *testing.T, base string) (address string, lose *atomic.Bool) {
	t.Helper()
	to, err := url.Parse(base)
	if err != nil {
		t.Fatal(err)
	}
	lose = &atomic.Bool{}
	proxy := &httputil.ReverseProxy{Rewrite: func(r *httputil.ProxyRequest) { r.SetURL(to) }}
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodPost || !lose.Load() {
			proxy.ServeHTTP(w, r)
			return
		}
		proxy.ServeHTTP(httptest.NewRecorder(), r) // the server has it, and nobody hears of it
		panic(http.ErrAbortHandler)
	}))
	t.Cleanup(server.Close)
	return server.URL, lose
}

// Where the answer is lost on its way, the entry is sent again under its id and
// stands in the book once.
func TestALostAnswerDoesNotWriteTwice(t *testing.T) {
	o := open(t)
	id := o.mine()
	address, lose := losing(t, o.base)
	b := browse(t, address)
	b.log.mayHear("ERR_EMPTY_RESPONSE")
	b.visit("/g/" + id + "/logbook")
	b.settled()
	lose.Store(true)
	b.reading("Jade", "22.5", "6.1")
	b.until(`document.getElementById("waits").innerText.includes("One entry waits on this device.")`)
	if n := len(o.readings(id)); n != 1 || b.waiting() != 1 {
		t.Fatalf("%d in the book, %d on the device", n, b.waiting())
	}
	lose.Store(false)
	ask[any](b, `void dispatchEvent(new Event("online"))`)
	b.until(`document.getElementById("waits").hidden`)
	if n := len(o.readings(id)); n != 1 || b.waiting() != 0 {
		t.Errorf("%d in the book, %d on the device", n, b.waiting())
	}
}

// A doubtful entry that waited is asked about when the line is back; until it is
// answered the device keeps it.
func TestADoubtfulEntryIsKeptUntilItIsAnswered(t *testing.T) {
	o := open(t)
	id := o.mine()
	b := browse(t, o.base)
	b.log.mayHear("ERR_INTERNET_DISCONNECTED")
	b.log.mayHear("422")
	b.visit("/g/" + id + "/logbook")
	b.settled()
	b.line(false)
	b.reading("Jade", "22.5", "61")
	b.until(`document.getElementById("waits").innerText.includes("waits on this device")`)
	b.line(true)
	b.until(`document.getElementById("waits").innerText.includes("has a question")`)
	b.follow("#waits button")
	if text := b.text("#entry .qa"); !strings.Contains(text, "did you mean 6.1") || b.value("ph") != "61" || b.waiting() != 1 {
		t.Errorf("the page asks %q, the field has %q, %d on the device", text, b.value("ph"), b.waiting())
	}
	b.follow("#entry .qa button")
	all := o.readings(id)
	if len(all) != 1 || all[0].PH.Read.Low != 6.1 || b.waiting() != 0 {
		t.Errorf("in the book: %+v, on the device %d", all, b.waiting())
	}
}

func TestACorrectedReadingKeepsBothInTheBrowser(t *testing.T) {
	o := open(t)
	id := o.mine()
	b := browse(t, o.base)
	b.do(chromedp.EmulateViewport(handWide, handHigh))
	b.visit("/g/" + id + "/logbook")
	b.settled()
	b.reading("Jade", "22.5", "6.8")
	b.until(`location.search.includes("said=written")`)
	b.settled()
	b.follow(`#last a[href*="correct="]`)
	b.write("ph", "6.1")
	b.click("#entry .btn.first")
	b.until(`location.search.includes("said=written") && document.querySelector("#last s")`)
	if text := b.text("#last tbody tr"); !strings.Contains(text, "6.8") || !strings.Contains(text, "6.1") || !strings.Contains(text, "corrected") {
		t.Errorf("the row says %q", text)
	}
	if all := o.readings(id); len(all) != 2 || all[0].PH.Read.Text != "6.8" || all[1].Corrects != all[0].ID {
		t.Errorf("in the book: %+v", all)
	}
}

// What is typed and not sent outlasts a reload.
func TestWhatIsTypedOutlastsAReload(t *testing.T) {
	o := open(t)
	id := o.mine()
	b := browse(t, o.base)
	b.visit("/g/" + id + "/logbook")
	b.settled()
	b.write("level", "22.5")
	b.click(`[name="done"][value="fed"]`)
	b.visit("/g/" + id + "/logbook")
	b.settled()
	b.until(`document.getElementById("status").innerText.includes("did not send")`)
	if b.value("level") != "22.5" || !ask[bool](b, one(`[name="done"][value="fed"]`)+".checked") {
		t.Error("it is not there")
	}
}

// A usual reading is few fields, and what stands above the first of them on a
// phone is short. Nobody is timed: the counts are our own decision.
func TestAUsualReadingIsShort(t *testing.T) {
	const (
		mostWords = 40 // above the fold, without the term's strip
		mostShown = 16 // controls in sight, each group of choices as one
	)
	o := open(t)
	id := o.mine()
	o.post("/g/"+id+"/logbook", entry("e1"), http.StatusOK) // the instruments are remembered
	b := browse(t, o.base)
	b.do(chromedp.EmulateViewport(handWide, handHigh))
	b.visit("/g/" + id + "/logbook")
	b.settled()
	shown := ask[int](b, `new Set([...document.getElementById("entry").elements].filter((e) => e.name && e.type !== "hidden" && e.checkVisibility()).map((e) => e.name)).size`)
	words := ask[int](b, `[...document.querySelectorAll("#main *")].filter((e) => e.children.length === 0 && e.checkVisibility() && e.tagName !== "OPTION" && e.getBoundingClientRect().bottom < innerHeight).map((e) => e.innerText ?? "").join(" ").split(/\s+/).filter(Boolean).length`)
	t.Logf("%d fields in sight, %d words above the fold of a %d by %d screen", shown, words, handWide, handHigh)
	if shown > mostShown || words > mostWords {
		t.Errorf("%d fields and %d words, want at most %d and %d", shown, words, mostShown, mostWords)
	}
	for _, name := range []string{"tub", "by", "level", "ph", "ec", "water", "done"} { // and the button: a usual reading
		if !ask[bool](b, fieldOf(name)+".checkVisibility()") {
			t.Errorf("%s is folded away", name)
		}
	}
	small := ask[[]string](b, `[...document.querySelectorAll("#entry .field, #entry .choice label, #entry .btn")].filter((e) => e.checkVisibility() && (e.getBoundingClientRect().height < 40 || e.classList.contains("field") && e.getBoundingClientRect().width < 150)).map((e) => e.textContent.trim())`)
	if len(small) > 0 {
		t.Errorf("too small for a thumb: %q", small)
	}
	if ask[bool](b, `document.documentElement.scrollWidth > innerWidth`) {
		t.Error("the page scrolls sideways")
	}
}
