//go:build !race

package web_test

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// tabLog is what a tab asked the network for, and what its console said.
type tabLog struct {
	base string

	mu       sync.Mutex
	requests int
	outside  []string
	console  []string
	expected []string // parts of what the console may say in this test
}

// listen turns on what is heard.
func (l *tabLog) listen() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := cdp.Call(ctx, t, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, t, log.Enable, cdp.Empty{})
		return err
	})
}

func (l *tabLog) hear(event any) {
	l.mu.Lock()
	defer l.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		l.requests++
		address := e.Request.URL
		if !strings.HasPrefix(address, l.base+"/") && !strings.HasPrefix(address, "about:") && !strings.HasPrefix(address, "data:") {
			l.outside = append(l.outside, address)
		}
	case *runtime.EventConsoleAPICalled:
		l.console = append(l.console, fmt.Sprint(e.Type))
	case *runtime.EventExceptionThrown:
		l.console = append(l.console, "exception: "+e.ExceptionDetails.Text)
	case *log.EventEntryAdded:
		l.console = append(l.console, e.Entry.Text+" "+e.Entry.URL)
	}
}

// mayHear allows what the browser itself says of an answer that the test wants,
// as it does of each status 4xx.
func (l *tabLog) mayHear(part string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.expected = append(l.expected, part)
}

// check fails the test for anything said or asked that should not have been.
func (l *tabLog) check(t *testing.T) {
	t.Helper()
	l.mu.Lock()
	defer l.mu.Unlock()
	for _, address := range l.outside {
		t.Errorf("a page asked for %s, which is not on this computer's Rootbell", address)
	}
said:
	for _, line := range l.console {
		for _, part := range l.expected {
			if strings.Contains(line, part) {
				continue said
			}
		}
		t.Errorf("the console says: %s", line)
	}
	if l.requests == 0 {
		t.Error("no request was seen: the log of the network is deaf")
	}
}
