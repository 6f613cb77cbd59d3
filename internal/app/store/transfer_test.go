package store_test

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/app/store"
)

// exported is a garden on its way, written by hand.
const exported = `rootbell garden 1
name: Heron bay
created: 2027-01-11T08:30:00.000Z
revisions: 2

revision: 1
at: 2027-01-11T08:30:00.000Z
why: begun
lines: 2
|rootbell: 1
|garden: Heron bay

revision: 2
at: 2027-01-11T08:31:00.250Z
why:
lines: 3
|# a\\b
|# as on Windows\r
\garden: Heron bay

`

// summed gives a text its sum, as anybody can with sha256sum.
func summed(text string) string {
	return fmt.Sprintf("%ssha256: %x\n", text, sha256.Sum256([]byte(text)))
}

func TestTheFormatIsAsItIsDocumented(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron bay", []byte("rootbell: 1\ngarden: Heron bay\n"), "begun", dawn))(t)
	must(s.Save(t.Context(), g.ID, 1, "Heron bay", []byte("# a\\b\n# as on Windows\r\ngarden: Heron bay"), "", later(1).Add(250*time.Millisecond)))(t)
	var out strings.Builder
	ok(t, s.Export(t.Context(), g.ID, &out))
	if out.String() != summed(exported) {
		t.Errorf("exported is\n%s", out.String())
	}
	if !store.IsExport([]byte(out.String())) || store.IsExport([]byte("rootbell: 1\n")) {
		t.Error("a garden on its way is not told from a plan")
	}
}

// What editors and mail do to lines does no harm.
func TestImportAsEditorsSaveIt(t *testing.T) {
	s := fresh(t)
	text := summed(exported)
	for name, changed := range map[string]string{
		"as it was":              text,
		"lines as on Windows":    strings.ReplaceAll(text, "\n", "\r\n"),
		"with a byte order mark": "\ufeff" + text,
	} {
		g, err := s.Import(t.Context(), strings.NewReader(changed), later(5))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var out strings.Builder
		ok(t, s.Export(t.Context(), g.ID, &out))
		if out.String() != text {
			t.Errorf("%s: it came back as\n%s", name, out.String())
		}
	}
}

// Nothing is kept of a file that is not right, and the line is named.
func TestDamagedImports(t *testing.T) {
	s := fresh(t)
	long := strings.Repeat("y", 300)
	cases := []struct {
		name, old, new string
		line           int
		reason         store.Reason
	}{
		{"a plan", "rootbell garden 1", "rootbell: 1", 1, store.Foreign},
		{"a newer format", "rootbell garden 1", "rootbell garden 3", 1, store.Newer},
		{"no format", "rootbell garden 1", "rootbell garden one", 1, store.Damaged},
		{"no name", "name: Heron bay", "name:", 2, store.Damaged},
		{"a long name", "name: Heron bay", "name: " + long, 2, store.Damaged},
		{"a name with blanks", "name: Heron bay", "name: Heron bay ", 2, store.Damaged},
		{"a name that rings", "name: Heron bay", "name: Heron\abay", 2, store.Damaged},
		{"two blanks", "name: Heron bay", "name:  Heron bay", 2, store.Damaged},
		{"another head", "created:", "changed:", 3, store.Damaged},
		{"no moment", "created: 2027-01-11", "created: 2027-02-30", 3, store.Damaged},
		{"a moment elsewhere", "08:30:00.000Z", "08:30:00.000+01:00", 3, store.Damaged},
		{"no revisions", "revisions: 2", "revisions: 0", 4, store.Damaged},
		{"too many", "revisions: 2", "revisions: 100001", 4, store.Damaged},
		{"more than there are", "revisions: 2", "revisions: 3", 21, store.Damaged},
		{"fewer than there are", "revisions: 2", "revisions: 1", 13, store.Damaged},
		{"a number with a sign", "revisions: 2", "revisions: +2", 4, store.Damaged},
		{"a line too many", "revisions: 2\n", "revisions: 2\n\n", 6, store.Damaged},
		{"a gap in the count", "revision: 2", "revision: 3", 13, store.Damaged},
		{"a long reason", "why: begun", "why: " + long, 8, store.Damaged},
		{"one line fewer", "lines: 2", "lines: 1", 11, store.Damaged},
		{"one line more", "lines: 2", "lines: 3", 12, store.Damaged},
		{"a minus", "lines: 2", "lines: -2", 9, store.Damaged},
		{"far too long", "lines: 2", "lines: 99999999", 9, store.Damaged},
		{"no mark before a line", "|rootbell", "rootbell", 10, store.Damaged},
		{"an end before the end", "|rootbell", `\rootbell`, 10, store.Damaged},
		{"an empty end", `\garden: Heron bay`, `\`, 19, store.Damaged},
		{"an escape that is none", `\\b`, `\b`, 17, store.Damaged},
		{"half an escape", `\\b`, `b\`, 17, store.Damaged},
		{"a zero byte", "|rootbell", "|\x00rootbell", 11, store.Damaged},
		{"no text", "|rootbell", "|\xffrootbell", 11, store.Damaged},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(exported, c.old) {
				t.Fatalf("%q is not there", c.old)
			}
			_, err := s.Import(t.Context(), strings.NewReader(summed(strings.Replace(exported, c.old, c.new, 1))), dawn)
			r := refused(t, err, c.reason)
			if r.Line != c.line || r.Hint == "" {
				t.Errorf("line %d: %v, want line %d", r.Line, r, c.line)
			}
		})
	}
	if all := must(s.Gardens(t.Context()))(t); len(all) > 0 {
		t.Errorf("kept all the same: %v", all)
	}
}

// Cut off anywhere, or with any byte changed, nothing is kept.
func TestEveryCutAndEveryByteIsNoticed(t *testing.T) {
	whole := []byte(summed(exported))
	for n := range whole {
		if _, err := store.Parse(whole[:n]); err == nil {
			t.Errorf("cut off after %d bytes it was taken", n)
		}
		changed := bytes.Clone(whole)
		changed[n] ^= 0x01
		if _, err := store.Parse(changed); err == nil {
			t.Errorf("with byte %d changed it was taken", n)
		}
	}
	if _, err := store.Parse(append(bytes.Clone(whole), '\n')); err == nil {
		t.Error("with a line behind its sum it was taken")
	}
}

func TestImportIsBounded(t *testing.T) {
	s := fresh(t)
	_, err := s.Import(t.Context(), endless{}, dawn)
	refused(t, err, store.Unfit)
	plan := strings.Repeat("|"+strings.Repeat("y", 1023)+"\n", 257)
	text := "rootbell garden 1\nname: Heron\ncreated: 2027-01-11T08:30:00.000Z\nrevisions: 1\n\nrevision: 1\nat: 2027-01-11T08:30:00.000Z\nwhy:\nlines: 257\n" + plan + "\n"
	_, err = s.Import(t.Context(), strings.NewReader(summed(text)), dawn)
	refused(t, err, store.Damaged)
}

// endless is a file without an end.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'y'
	}
	return len(p), nil
}

// Out and in again, any garden is what it was.
func TestAnyGardenComesBack(t *testing.T) {
	s := fresh(t)
	line := rapid.StringOf(rapid.RuneFrom([]rune(`aß⌀ |\:#'"`)))
	text := rapid.StringOf(rapid.RuneFrom([]rune("aß⌀ |\\:#\n\r\t\u2028\ufeff")))
	rapid.Check(t, func(t *rapid.T) {
		ctx := t.Context()
		start := time.UnixMilli(rapid.Int64Range(0, 1<<42).Draw(t, "start")).UTC()
		texts := rapid.SliceOfN(text, 1, 6).Draw(t, "texts")
		g, err := s.Create(ctx, "x"+line.Draw(t, "name"), []byte(texts[0]), line.Draw(t, "why"), start)
		if err != nil {
			t.Fatal(err)
		}
		base := 1
		for i, text := range texts[1:] {
			r, err := s.Save(ctx, g.ID, base, "x"+line.Draw(t, "name"), []byte(text), line.Draw(t, "why"), start.Add(time.Duration(i)*time.Second))
			if err != nil {
				t.Fatal(err)
			}
			base = r.Number
		}
		var out bytes.Buffer
		if err := s.Export(ctx, g.ID, &out); err != nil {
			t.Fatal(err)
		}
		in, err := s.Import(ctx, bytes.NewReader(out.Bytes()), dawn)
		if err != nil {
			t.Fatalf("%v\n%s", err, out.String())
		}
		if g, err = s.Garden(ctx, g.ID); err != nil || in.Name != g.Name || in.Revision != g.Revision || in.Created != g.Created {
			t.Fatalf("%v came back as %v (%v)", g, in, err)
		}
		for n := 1; n <= g.Revision; n++ {
			was, err := s.Revision(ctx, g.ID, n)
			if err != nil {
				t.Fatal(err)
			}
			is, err := s.Revision(ctx, in.ID, n)
			if err != nil || !bytes.Equal(is.Text, was.Text) || is.Why != was.Why || is.At != was.At {
				t.Fatalf("%v came back as %v (%v)", was, is, err)
			}
		}
	})
}

// Whatever is read, is written as it was read but for the ends of lines.
func FuzzImport(f *testing.F) {
	f.Add([]byte(exported), true)
	f.Add([]byte(summed(exported)), false)
	f.Add([]byte(exportedLogbook), true)
	f.Add([]byte("\ufeffrootbell garden 1\r\n"), false)
	f.Fuzz(func(t *testing.T, text []byte, sum bool) {
		if sum {
			text = []byte(summed(string(text)))
		}
		again, err := store.Parse(text)
		if err != nil {
			refusedForAReason(t, err)
			return
		}
		plain := bytes.ReplaceAll(bytes.TrimPrefix(text, []byte("\ufeff")), []byte("\r\n"), []byte("\n"))
		if !bytes.Equal(again, plain) {
			t.Errorf("%q was read as %q", text, again)
		}
	})
}

func refusedForAReason(t *testing.T, err error) {
	t.Helper()
	var r *store.Refused
	if !errors.As(err, &r) || r.Line < 1 || r.What == "" || r.Hint == "" {
		t.Errorf("not refused with a line and a hint: %#v", err)
	}
}
