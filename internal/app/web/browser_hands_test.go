//go:build !race

package web_test

import (
	"fmt"
	"strconv"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// patience is how long a condition is waited for before the test gives up; it
// bounds a broken test and says nothing of how fast a page is.
const patience = 30 * time.Second

// ask gives the value of an expression in the page.
func ask[T any](b *tab, expression string) T {
	b.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		b.Fatalf("%s: %v", expression, err)
	}
	return v
}

// until waits for a condition in the page, also over a change of page.
func (b *tab) until(condition string) {
	b.Helper()
	last := error(nil)
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		var met bool
		if met, last = chromedp.Run(b.ctx, chromedp.Evaluate[bool]("!!("+condition+")")); met && last == nil {
			return
		}
	}
	text, _ := chromedp.Run(b.ctx, chromedp.Evaluate[string]("location.href + '\\n' + document.body.innerText.slice(0, 1500)"))
	b.Fatalf("never came: %s (%v)\n%s", condition, last, text)
}

// settled waits until the page and all it loads are there.
func (b *tab) settled() {
	b.Helper()
	b.until(`document.readyState === "complete"`)
}

// one is the expression of the element of a selector.
func one(selector string) string { return "document.querySelector(" + strconv.Quote(selector) + ")" }

// fieldOf is the expression of the field of a name.
func fieldOf(name string) string { return one(`[name="` + name + `"]`) }

// middle is the middle of an element on the screen, scrolled into sight.
func (b *tab) middle(selector string) (x, y float64) {
	b.Helper()
	at := ask[[]float64](b, `(() => { const e = `+one(selector)+`; e.scrollIntoView({block: "center", behavior: "instant"}); const r = e.getClientRects()[0]; return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	return at[0], at[1]
}

// click presses the mouse on an element.
func (b *tab) click(selector string) {
	b.Helper()
	x, y := b.middle(selector)
	b.do(chromedp.MouseClickXY(x, y))
}

// follow presses what leads to another page and waits for it.
func (b *tab) follow(selector string) {
	b.Helper()
	mark := fmt.Sprintf("m%d", time.Now().UnixNano())
	ask[any](b, fmt.Sprintf("void (window.%s = true)", mark))
	b.click(selector)
	b.until(fmt.Sprintf(`!window.%s && document.readyState === "complete"`, mark))
}

// keys presses keys where the focus is.
func (b *tab) keys(keys string, options ...chromedp.KeyOption) {
	b.Helper()
	b.do(chromedp.KeyEvent(keys, options...))
}

// write puts a text in the field of a name in place of what is there, key by
// key.
func (b *tab) write(name, text string) {
	b.Helper()
	b.click(`[name="` + name + `"]`)
	b.keys("a", chromedp.KeyModifiers(chromedp.ModifierCtrl))
	if text == "" {
		b.keys(kb.Delete)
		return
	}
	b.keys(text)
}

// value is what the field of a name has in it.
func (b *tab) value(name string) string {
	b.Helper()
	return ask[string](b, fieldOf(name)+".value")
}

// text is what an element says on the screen.
func (b *tab) text(selector string) string {
	b.Helper()
	return ask[string](b, one(selector)+".innerText")
}
