package web_test

import (
	"net/url"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// filled is the page's main form as a browser without script would send it,
// with its first button pressed.
func filled(t *testing.T, body string) url.Values {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	forms := all(doc, func(n *html.Node) bool {
		return n.Data == "form" && (strings.HasSuffix(attribute(n, "action"), "/build") || strings.HasSuffix(attribute(n, "action"), "/mix") || strings.HasSuffix(attribute(n, "action"), "/season") || strings.HasSuffix(attribute(n, "action"), "/class") || strings.HasSuffix(attribute(n, "action"), "/choose") || strings.HasSuffix(attribute(n, "action"), "/merge"))
	})
	if len(forms) == 0 {
		t.Fatal("no form on the page")
	}
	out := url.Values{}
	for _, n := range all(forms[0], func(n *html.Node) bool { return attribute(n, "name") != "" && !has(n, "disabled") }) {
		name := attribute(n, "name")
		switch n.Data {
		case "input":
			kind := attribute(n, "type")
			if (kind == "radio" || kind == "checkbox") && !has(n, "checked") {
				continue
			}
			out.Add(name, attribute(n, "value"))
		case "select":
			out.Set(name, chosen(n))
		case "textarea":
			out.Set(name, innerText(n))
		}
	}
	return out
}

func chosen(n *html.Node) string {
	options := all(n, func(n *html.Node) bool { return n.Data == "option" })
	for _, option := range options {
		if has(option, "selected") {
			return attribute(option, "value")
		}
	}
	if len(options) > 0 {
		return attribute(options[0], "value")
	}
	return ""
}

func all(n *html.Node, is func(*html.Node) bool) []*html.Node {
	var out []*html.Node
	for d := range n.Descendants() {
		if d.Type == html.ElementNode && is(d) {
			out = append(out, d)
		}
	}
	return out
}

func attribute(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func has(n *html.Node, key string) bool {
	for _, a := range n.Attr {
		if a.Key == key {
			return true
		}
	}
	return false
}

func innerText(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return b.String()
}
