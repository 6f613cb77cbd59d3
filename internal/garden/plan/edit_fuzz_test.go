package plan

import (
	"bytes"
	"strconv"
	"testing"
)

var oddLayouts = []string{
	least, whole, Starter(0), Starter(1), "tubs:\n- name: A\n-\n  name: B\n", "school: {teams: [a,\n  b, # x\n  c,]}\n", "lamps: [{name: a}\n  ,{name: b}]\n",
	"tubs:\n  - - a\n    - b\n", "lamps:\r\n  - name: a\r\n    # x\r\n", "\ufefflamps: []\n", "lamps:\u00a0[{name:\u00a0a}]", "school:\n  teams:\n  - a # x\n  -\n  - c",
	"~", "- a\n", "--- {lamps: [a: 1]}\n", "lamps: ~ # x\n", "lamps: [ # x\n ]\n", "? lamps\n: - a\n", "school: {closed: , teams: }\n", "lamps:\n    -   name: a\n        lit: [1,\n    2]\n",
}

// Whatever the text, path and value: an edit is refused in words, or its text
// says what it should and is told as one difference.
func FuzzEdits(f *testing.F) {
	for _, text := range oddLayouts {
		f.Add([]byte(text), "lamps", "{name: b, lit: [\"06:00\", 22:00]}")
		f.Add([]byte(text), "school.teams", "a: b, c")
		f.Add([]byte(text), "tubs[0].lid.keep_clear[0].circle[1]", "2,5 cm")
		f.Add([]byte(text), "tubs[1]", "[1, {a: 2}]")
	}
	f.Fuzz(func(t *testing.T, text []byte, path, value string) {
		for name, edit := range map[string]func() ([]byte, error){
			"append":  func() ([]byte, error) { return Append(text, path, value) },
			"remove":  func() ([]byte, error) { return Remove(text, path) },
			"replace": func() ([]byte, error) { return Replace(text, path, value) },
			"edit":    func() ([]byte, error) { return Edit(text, path, value) },
			"clear":   func() ([]byte, error) { return Clear(text, path) },
		} {
			out, err := edit()
			if err != nil {
				if out != nil || err.Error() == "" {
					t.Fatalf("%s: refused with %q and a text", name, err)
				}
				continue
			}
			if again := Read(out); again.Trouble() != nil {
				t.Fatalf("%s: the text cannot be read: %v\n%q", name, again.Trouble(), out)
			}
			if d := Differences(text, out); len(d) > 1 && name != "replace" {
				t.Fatalf("%s is told as %+v", name, d)
			}
		}
		out, err := Append(text, path, value)
		if n := Items(text, path); err == nil && Items(out, path) != n+1 {
			t.Fatalf("%d items and one more are %d", n, Items(out, path))
		} else if err == nil && n > 0 {
			back, err := Remove(out, path+"["+strconv.Itoa(n)+"]")
			if err == nil && !bytes.Equal(back, text) && len(Differences(text, back)) > 0 && Differences(text, back)[0].Words != LayoutOnly {
				t.Fatalf("appended and taken out again:\n%q\n%q", text, back)
			}
		}
		out, err = Edit(text, path, value)
		if typed, _, _, ok := Value(out, path); err == nil && value != "" && (!ok || typed != string(plainBlanks(value))) {
			t.Fatalf("%q is read back as %q", value, typed)
		}
	})
}

func FuzzDifferences(f *testing.F) {
	for i, text := range oddLayouts {
		f.Add([]byte(text), []byte(oddLayouts[(i+1)%len(oddLayouts)]))
		f.Add([]byte(whole), []byte(text))
	}
	f.Fuzz(func(t *testing.T, was, is []byte) {
		if d := Differences(was, was); len(d) > 0 {
			t.Fatalf("a text differs from itself: %+v", d)
		}
		d := Differences(was, is)
		if len(d) == 0 != bytes.Equal(was, is) {
			t.Fatalf("%d differences", len(d))
		}
		lines, newLines := bytes.Count(was, []byte("\n"))+1, bytes.Count(is, []byte("\n"))+1
		for _, one := range d {
			if one.OldLine < 0 || one.NewLine < 0 || one.Path != "" && (one.OldLine > lines || one.NewLine > newLines || one.OldLine+one.NewLine == 0) {
				t.Fatalf("a difference in no line: %+v", one)
			}
			if one.Words == "" {
				t.Fatalf("a difference without words: %+v", one)
			}
			_ = PathWords(is, one.Path)
		}
	})
}
