//go:build !race

package web_test

import (
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestEveryPageServesEveryone walks every page in every state, in both unit
// systems, at a desk and on a phone: axe-core finds nothing, and nothing has to
// be scrolled sideways at 200 % zoom or at 320 px.
func TestEveryPageServesEveryone(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			t.Parallel()
			o := open(t)
			scenes := o.everyScene(units)
			b := o.inUnits(t, units)
			seen := map[string]bool{}
			for _, s := range scenes {
				s.open(b)
				b.units(s, units)
				ask[any](b, `document.querySelectorAll("details:not([data-part])").forEach((d) => { d.open = true; })`)
				b.serves(s, seen, deskWide/2, 320) // 200 % zoom is half as many pixels
			}
		})
	}
}

// TestAxeIsThere keeps the walk from passing without having looked.
func TestAxeIsThere(t *testing.T) {
	if _, err := os.Stat(axePath); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("axe-core is not there: ", err)
		}
		t.Skip("axe-core is not there ('make tools' installs it)")
	}
}

// units checks that a page is in the units asked for: most pages with numbers
// would show it.
func (b *tab) units(s scene, units string) {
	b.Helper()
	want := map[string]string{"metric": "cm, L", "us": "in, gal"}[units]
	if own := ask[string](b, `document.querySelector(".set b")?.innerText ?? ""`); own != want {
		b.Errorf("%s is shown in %s, want %s", s.name, own, want)
	}
}

// fits checks that nothing is wider than the screen.
func (b *tab) fits(s scene, width int64) {
	b.Helper()
	if ask[bool](b, `document.scrollingElement.scrollWidth <= document.scrollingElement.clientWidth`) {
		return
	}
	over := ask[[]string](b, `(() => {
		const out = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), range = document.createRange();
		while (walk.nextNode() && out.length < 5) {
			range.selectNodeContents(walk.currentNode);
			if (range.getBoundingClientRect().right > innerWidth + 1) out.push(walk.currentNode.parentElement.outerHTML.slice(0, 120));
		}
		return out;
	})()`)
	b.Errorf("%s has to be scrolled sideways at %d px: %s", s.name, width, strings.Join(over, "; "))
}

// axePath is where 'make tools' puts axe-core.
const axePath = "../../../.cache/node/node_modules/axe-core/axe.min.js"

// violation is what axe-core found wrong, at one element.
type violation struct{ Rule, Help, Where, Why string }

const axeRun = `axe.run(document, {resultTypes: ["violations"]}).then((r) => r.violations.flatMap((v) =>
	v.nodes.map((n) => ({Rule: v.id, Help: v.help, Where: n.target.join(" ") + " " + n.html.slice(0, 160), Why: n.failureSummary.slice(0, 300)}))))`

// serves checks the page that is open: nothing of it is wider than a screen of
// any of the widths, and axe-core finds nothing at a desk and in a hand that was
// not seen before.
func (b *tab) serves(s scene, seen map[string]bool, widths ...int64) {
	b.Helper()
	for _, width := range widths {
		b.wide(width, handHigh)
		b.fits(s, width)
	}
	axe, err := os.ReadFile(axePath)
	if err != nil {
		return // TestAxeIsThere says so
	}
	ask[any](b, string(axe)+"; void 0")
	for _, width := range []int64{deskWide, handWide} {
		b.wide(width, deskHigh)
		b.shutsOut(s, width, seen)
	}
}

// shutsOut reports what axe-core finds, each thing once.
func (b *tab) shutsOut(s scene, width int64, seen map[string]bool) {
	b.Helper()
	found, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]violation](axeRun, chromedp.EvalAwaitPromise))
	if err != nil {
		b.Fatalf("%s: %v", s.name, err)
	}
	for _, v := range found {
		if key := v.Rule + v.Where; !seen[key] {
			seen[key] = true
			b.Errorf("%s at %d px: %s (%s)\n    %s\n    %s", s.name, width, v.Rule, v.Help, v.Where, v.Why)
		}
	}
}
