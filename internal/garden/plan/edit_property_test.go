package plan

import (
	"bytes"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// plans are texts that edits are tried on, each with both line ends.
func plans(t *testing.T) [][]byte {
	t.Helper()
	texts := [][]byte{[]byte(whole), []byte(least), []byte(Starter(0)), []byte(Starter(1))}
	for _, name := range []string{"fernhollow", "saltbrook"} {
		text, err := os.ReadFile("../../../examples/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, text)
	}
	for _, text := range texts {
		texts = append(texts, bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")), bytes.TrimRight(text, "\n"))
	}
	return texts
}

// pathsOf are the paths of a tree that stand for what is asked.
func pathsOf(n *node, path string, wanted func(n *node, path string) bool) []string {
	var out []string
	if path != "" && wanted(n, path) {
		out = append(out, path)
	}
	for _, e := range n.entries {
		out = append(out, pathsOf(e.value, join(path, e.key), wanted)...)
	}
	for i, item := range n.items {
		out = append(out, pathsOf(item, path+"["+strconv.Itoa(i)+"]", wanted)...)
	}
	return out
}

func isItemList(n *node, path string) bool {
	k, err := kinOf(splitPath(path), path)
	return err == nil && k.isList() && len(n.items) > 0
}

var (
	anyTyped = rapid.OneOf(
		rapid.SampledFrom([]string{"3 in", "2,5 cm", `5'2"`, "yes", "null", "- 1", "# x", "a: b", "'", `"`, `\`, "!x", "? x", "---", "a #b", "80 to 120 mg/L", "]"}),
		rapid.StringMatching(`[!-Zµ°½−é][ -~µ°½−é]{0,30}`),
	)
	anyItem = rapid.OneOf(
		rapid.SampledFrom([]string{
			"{at: [12 cm, 9 cm]}", "{rectangle: [0 cm, 15 cm, 3 cm, 23 cm], why: handle}", "[1 cm, 2 cm]", "{}", "[]", "Amber",
			`{name: "Wren: 2", lid: {size: [54 cm, 38 cm], keep_clear: [{circle: [1 cm, 2 cm, 1 cm], why: 'a, b'}], holes: []}, cup: {rim: 8 cm}, hole:}`,
			"{day: 2027-03-09, why: snow}", "{ name : x , crop: mint }",
		}),
		rapid.StringMatching(`[!-Za-z][ -Za-zé]{0,20}[!-Za-z]`).Filter(func(s string) bool { return !strings.ContainsAny(s[:1], "[{") }),
	)
)

func TestAppendThenRemoveGivesTheSameBytes(t *testing.T) {
	texts := plans(t)
	rapid.Check(t, func(t *rapid.T) {
		text := texts[rapid.IntRange(0, len(texts)-1).Draw(t, "text")]
		list := rapid.SampledFrom(pathsOf(Read(text).root, "", isItemList)).Draw(t, "list")
		item := anyItem.Draw(t, "item")
		more, err := Append(text, list, item)
		if err != nil {
			t.Fatalf("append to %s: %v", list, err)
		}
		n := Items(text, list)
		if Items(more, list) != n+1 {
			t.Fatalf("%s has %d items, then %d", list, n, Items(more, list))
		}
		if d := Differences(text, more); len(d) != 1 || d[0].OldLine != 0 || d[0].Path != list+"["+strconv.Itoa(n)+"]" {
			t.Fatalf("%s: the differences are %+v", list, d)
		}
		for _, comment := range commentsOf(text) {
			if !bytes.Contains(more, []byte(comment)) {
				t.Fatalf("%s: the comment %q is gone", list, comment)
			}
		}
		again, err := Remove(more, list+"["+strconv.Itoa(n)+"]")
		if err != nil || !bytes.Equal(again, text) {
			t.Fatalf("%s: taking it out again gives another text (%v)\n%s\n%s", list, err, more, again)
		}
	})
}

// commentsOf are the comments of a text that is one of ours: none has a # in a
// value.
func commentsOf(text []byte) []string {
	var out []string
	for line := range strings.SplitSeq(string(text), "\n") {
		if i := strings.IndexByte(line, '#'); i >= 0 {
			out = append(out, line[i:])
		}
	}
	return out
}

func TestRemoveTakesOutOneThing(t *testing.T) {
	texts := plans(t)
	rapid.Check(t, func(t *rapid.T) {
		text := texts[rapid.IntRange(0, len(texts)-1).Draw(t, "text")]
		d := Read(text)
		path := rapid.SampledFrom(pathsOf(d.root, "", func(*node, string) bool { return true })).Draw(t, "path")
		less, err := Remove(text, path)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		if found := Differences(text, less); len(found) != 1 {
			t.Fatalf("%s: the differences are %+v", path, found)
		}
		n, _, _ := d.root.follow(splitPath(path))
		from, _ := d.lineOf(n.start)
		to, _ := d.lineOf(n.end)
		kept := append(commentsOf(text[:d.src.starts[max(from-1, 0)]]), commentsOf(text[d.startsOf(to+1):])...)
		for _, comment := range kept {
			if !bytes.Contains(less, []byte(comment)) {
				t.Fatalf("%s: the comment %q is gone\n%s", path, comment, less)
			}
		}
		if n.flow && (n.shape == mapping || n.shape == sequence) {
			same, err := Replace(text, path, string(text[n.start:n.end]))
			if err == nil && !bytes.Equal(same, text) {
				t.Fatalf("%s: replaced by itself it is another", path)
			}
		}
	})
}

// lineOf is the line of a byte, counted from 0.
func (d *Document) lineOf(at int) (line int, ok bool) {
	return bytes.Count(d.text[:at], []byte("\n")), true
}

func (d *Document) startsOf(line int) int {
	if line < len(d.src.starts) {
		return d.src.starts[line]
	}
	return len(d.text)
}

// Whatever is typed at many places at once stands there then, alone.
func TestEditAllThenValue(t *testing.T) {
	texts := plans(t)
	paths := []string{
		"garden", "units", "shelf.width", "shelf.depth", "place.co2", "tap.ph", "tubs[0].hole", "tubs[0].lid.size[0]", "tubs[0].lid.size[1]", "tubs[0].cup.rim",
		"tubs[0].inside.corner_radius[0]", "tubs[0].inside.corner_radius[1]", "tubs[0].air.flow", "tubs[0].outside.size[1]", "tubs[0].round.top",
		"tubs[0].lid.outline[0][1]", "school.meal.day", "prices.tub", "tubs[0].spacing.between", "tools.ph", "tubs[0].method",
	}
	rapid.Check(t, func(t *rapid.T) {
		text := texts[rapid.IntRange(0, len(texts)-1).Draw(t, "text")]
		var changes []Change
		for _, path := range rapid.SliceOfNDistinct(rapid.SampledFrom(paths), 1, 5, rapid.ID).Draw(t, "paths") {
			changes = append(changes, Change{path, rapid.OneOf(anyTyped, rapid.Just("")).Draw(t, "typed")})
		}
		edited, refused := EditAll(text, changes)
		if len(refused) > 0 {
			t.Fatalf("refused: %v", refused)
		}
		for _, c := range changes {
			typed, _, _, ok := Value(edited, c.Path)
			if typed != string(plainBlanks(c.Typed)) || ok != (c.Typed != "") {
				t.Fatalf("%s = %q is read back as %q in\n%s", c.Path, c.Typed, typed, edited)
			}
		}
		again, refused := EditAll(edited, changes)
		if len(refused) > 0 || !bytes.Equal(again, edited) {
			t.Fatalf("the same changes again give another text: %v", refused)
		}
	})
}

func TestOneEditIsOneDifference(t *testing.T) {
	texts := plans(t)
	for _, text := range texts {
		if d := Differences(text, text); len(d) > 0 {
			t.Errorf("a text differs from itself: %+v", d)
		}
	}
	scalars := func(n *node, path string) bool { return n.shape == scalar }
	rapid.Check(t, func(t *rapid.T) {
		text := texts[rapid.IntRange(0, len(texts)-1).Draw(t, "text")]
		path := rapid.SampledFrom(pathsOf(Read(text).root, "", scalars)).Draw(t, "path")
		typed := anyTyped.Draw(t, "typed")
		old, _, _, _ := Value(text, path)
		edited, err := Edit(text, path, typed)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		d := Differences(text, edited)
		if typed == old {
			if len(d) > 0 && d[0].Words != LayoutOnly {
				t.Fatalf("%s: nothing was typed, and the differences are %+v", path, d)
			}
			return
		}
		if len(d) != 1 || !strings.HasPrefix(path, d[0].Path) || d[0].Path == "" || d[0].OldLine == 0 || d[0].OldLine != d[0].NewLine || !strings.Contains(d[0].New, typed) {
			t.Fatalf("%s = %q: the differences are %+v", path, typed, d)
		}
	})
}

// What cannot be read at a field is said at that field, whatever it is.
func TestProblemsNameTheirField(t *testing.T) {
	text := []byte(whole)
	scalars := pathsOf(Read(text).root, "", func(n *node, path string) bool { return n.shape == scalar })
	rapid.Check(t, func(t *rapid.T) {
		path := rapid.SampledFrom(scalars).Draw(t, "path")
		edited, err := Edit(text, path, anyTyped.Draw(t, "typed"))
		if err != nil {
			t.Fatal(err)
		}
		_, problems := Parse("plan", edited)
		for _, p := range problems {
			if p.Field == "" || !strings.HasPrefix(path, strings.TrimRight(p.Field, "]0123456789[")) && !strings.HasSuffix(p.Field, ".name") {
				t.Fatalf("%s: the problem %q is said at %q", path, p, p.Field)
			}
		}
	})
}
