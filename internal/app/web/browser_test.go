//go:build !race

// The browser's tests stay out of the race run: the races there could be are in
// the server, which the other tests of this package drive with many requests at
// once, and a browser beside the detector takes many minutes.

package web_test

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// chromium is the one browser of this test binary; each test has tabs of its
// own in it, with their own cookies and kept entries.
var chromium struct {
	once    sync.Once
	ctx     context.Context
	stop    []func()
	failure error
}

func TestMain(m *testing.M) {
	code := m.Run()
	for _, stop := range chromium.stop {
		stop()
	}
	os.Exit(code)
}

// startChromium starts the browser with a fresh profile, and with all that it
// would fetch by itself turned off.
func startChromium() {
	path, err := exec.LookPath("chromium")
	if err != nil {
		chromium.failure = fmt.Errorf("chromium is not there ('make tools' installs it): %w", err)
		return
	}
	profile, err := os.MkdirTemp("", "rootbell-browser")
	if err != nil {
		chromium.failure = err
		return
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		chromedp.NoSandbox, // it cannot be had as root or in most containers
		chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("hide-scrollbars", true),
		chromedp.Flag("font-render-hinting", "none"),
	)
	ctx, stopAllocator := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stopBrowser := chromedp.NewContext(ctx)
	chromium.stop = []func(){stopBrowser, stopAllocator, func() { _ = os.RemoveAll(profile) }}
	chromium.failure = chromedp.Do(ctx)
	chromium.ctx = ctx
}

// tab is one tab of the browser at a server. It fails its test when a page asks
// another host for anything or the console has an error.
type tab struct {
	*testing.T
	ctx  context.Context
	base string
	log  *tabLog
}

// browse opens a tab. Without a browser the test is skipped, in CI it fails.
func browse(t *testing.T, base string) *tab {
	t.Helper()
	chromium.once.Do(startChromium)
	if chromium.failure != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal(chromium.failure)
		}
		t.Skip(chromium.failure)
	}
	return openTab(chromium.ctx, t, base, chromedp.WithNewBrowserContext())
}

// second opens another tab of the same person: cookies and kept entries are
// shared.
func (b *tab) second() *tab {
	b.Helper()
	return openTab(b.ctx, b.T, b.base)
}

func openTab(parent context.Context, t *testing.T, base string, options ...chromedp.ContextOption) *tab {
	t.Helper()
	log := &tabLog{base: base}
	ctx, cancel := chromedp.NewContext(parent, append(options, chromedp.WithListener(log.hear))...)
	b := &tab{t, ctx, base, log}
	t.Cleanup(func() {
		cancel()
		log.check(t)
	})
	b.do(log.listen(), chromedp.EmulateViewport(deskWide, deskHigh))
	return b
}

// The screens that the look is made for: a shared low-end laptop and a phone.
const (
	deskWide, deskHigh = 1366, 768
	handWide, handHigh = 360, 740
)

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.Fatal(err)
	}
}

// visit opens an address.
func (b *tab) visit(address string) {
	b.Helper()
	b.do(chromedp.Navigate(b.base + address))
}

// withoutScript turns the pages' scripts off.
func (b *tab) withoutScript() {
	b.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		return err
	}))
}
