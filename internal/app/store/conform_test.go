package store_test

import (
	"errors"
	"strings"
	"testing"

	"rootbell/internal/app/store"
)

// What any database under the store must do. Each case begins with an empty
// one.
var conform = map[string]func(*testing.T, *store.Store){
	"an empty store has nothing":             nothingThere,
	"a garden is found as it was made":       asItWasMade,
	"latest changed first":                   latestFirst,
	"revisions count and stay":               revisionsStay,
	"the same text makes no revision":        sameText,
	"a change of an old revision conflicts":  conflicts,
	"a garden in the bin is kept":            theBin,
	"what cannot be kept is refused whole":   unfitValues,
	"text comes back byte for byte":          byteForByte,
	"a setting is its last value":            settings,
	"a garden goes out and in with its past": outAndIn,
}

func TestConformance(t *testing.T) {
	for name, spec := range conform {
		t.Run(name, func(t *testing.T) {
			s := fresh(t)
			spec(t, s)
			sound(t, s)
		})
	}
}

func nothingThere(t *testing.T, s *store.Store) {
	if all := must(s.Gardens(t.Context()))(t); len(all) > 0 {
		t.Error(all)
	}
	var none *store.NotFound
	if _, err := s.Garden(t.Context(), "nobody"); !errors.As(err, &none) {
		t.Error(err)
	}
	if _, _, err := s.Latest(t.Context(), "nobody"); !errors.As(err, &none) {
		t.Error(err)
	}
	if _, err := s.Revision(t.Context(), "nobody", 0); !errors.As(err, &none) {
		t.Error(err)
	}
	if _, err := s.Revisions(t.Context(), "nobody"); !errors.As(err, &none) {
		t.Error(err)
	}
	if _, err := s.Save(t.Context(), "nobody", 1, "Heron", nil, "", dawn); !errors.As(err, &none) {
		t.Error(err)
	}
	for _, err := range []error{s.Discard(t.Context(), "nobody", dawn), s.BringBack(t.Context(), "nobody", dawn), s.Export(t.Context(), "nobody", &strings.Builder{})} {
		if !errors.As(err, &none) {
			t.Error(err)
		}
	}
}

func asItWasMade(t *testing.T, s *store.Store) {
	made := must(s.Create(t.Context(), "  Heron bay ", []byte("garden: Heron bay\n"), "begun", dawn))(t)
	want := store.Garden{ID: made.ID, Name: "Heron bay", Revision: 1, Created: dawn, Changed: dawn}
	if made != want {
		t.Errorf("made %v", made)
	}
	if got := must(s.Garden(t.Context(), made.ID))(t); got != want {
		t.Errorf("found %v", got)
	}
	if strings.Trim(made.ID, "0123456789abcdefghijklmnopqrstuvwxyz") != "" || len(made.ID) > 20 {
		t.Errorf("the id %q is not short and safe in an address", made.ID)
	}
	other := must(s.Create(t.Context(), "Heron bay", nil, "", dawn))(t)
	if other.ID == made.ID {
		t.Error("two gardens have one id")
	}
}

func latestFirst(t *testing.T, s *store.Store) {
	a := must(s.Create(t.Context(), "A", []byte("a"), "", later(1)))(t)
	b := must(s.Create(t.Context(), "B", []byte("b"), "", later(2)))(t)
	c := must(s.Create(t.Context(), "C", []byte("c"), "", later(3)))(t)
	must(s.Save(t.Context(), a.ID, 1, "A2", []byte("a2"), "", later(4)))(t)
	names(t, must(s.Gardens(t.Context()))(t), "A2 C B")
	ok(t, s.Discard(t.Context(), b.ID, later(5)))
	ok(t, s.Discard(t.Context(), c.ID, later(6)))
	names(t, must(s.Gardens(t.Context()))(t), "A2")
	names(t, must(s.Bin(t.Context()))(t), "C B")
	ok(t, s.BringBack(t.Context(), b.ID, later(7)))
	names(t, must(s.Gardens(t.Context()))(t), "B A2")
}

func names(t *testing.T, gardens []store.Garden, want string) {
	t.Helper()
	var got []string
	for _, g := range gardens {
		got = append(got, g.Name)
	}
	if strings.Join(got, " ") != want {
		t.Errorf("gardens %v, want %s", got, want)
	}
}

func revisionsStay(t *testing.T, s *store.Store) {
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "begun", dawn))(t)
	must(s.Save(t.Context(), g.ID, 1, "Heron", []byte("two"), "wider lid", later(1)))(t)
	must(s.Save(t.Context(), g.ID, 2, "Otter", []byte("one"), "", later(2)))(t)

	if of, r, err := s.Latest(t.Context(), g.ID); err != nil || of.Name != "Otter" || r.Number != 3 || string(r.Text) != "one" || !r.At.Equal(later(2)) {
		t.Errorf("the latest is %v, %v (%v)", of, r, err)
	}
	for n, want := range map[int]string{0: "one", 1: "one", 2: "two", 3: "one"} {
		if r := must(s.Revision(t.Context(), g.ID, n))(t); string(r.Text) != want || r.Garden != g.ID {
			t.Errorf("revision %d is %q", n, r.Text)
		}
	}
	var none *store.NotFound
	for _, n := range []int{-1, 4} {
		if _, err := s.Revision(t.Context(), g.ID, n); !errors.As(err, &none) {
			t.Errorf("revision %d: %v", n, err)
		}
	}
	all := must(s.Revisions(t.Context(), g.ID))(t)
	if len(all) != 3 {
		t.Fatalf("%d revisions", len(all))
	}
	for i, want := range []store.Revision{{Number: 3, At: later(2)}, {Number: 2, Why: "wider lid", At: later(1)}, {Number: 1, Why: "begun", At: dawn}} {
		got := all[i]
		if got.Number != want.Number || got.Why != want.Why || got.At != want.At || got.Text != nil || got.Garden != g.ID {
			t.Errorf("revision listed as %v, want %v", got, want)
		}
	}
	if g = must(s.Garden(t.Context(), g.ID))(t); g.Name != "Otter" || g.Revision != 3 || g.Changed != later(2) || g.Created != dawn {
		t.Errorf("the garden is %v", g)
	}
}

func sameText(t *testing.T, s *store.Store) {
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "begun", dawn))(t)
	for _, base := range []int{1, 0, 9} {
		r := must(s.Save(t.Context(), g.ID, base, "Heron", []byte("one"), "again", later(1)))(t)
		if r.Number != 1 || r.Why != "begun" || r.At != dawn {
			t.Errorf("from %d: %v", base, r)
		}
	}
	// A form sent twice, because the answer was lost on its way.
	must(s.Save(t.Context(), g.ID, 1, "Heron", []byte("two"), "", later(2)))(t)
	if r := must(s.Save(t.Context(), g.ID, 1, "Heron", []byte("two"), "", later(3)))(t); r.Number != 2 || r.At != later(2) {
		t.Errorf("sent twice: %v", r)
	}
	if g = must(s.Garden(t.Context(), g.ID))(t); g.Revision != 2 || g.Changed != later(2) {
		t.Errorf("the garden is %v", g)
	}
}

func conflicts(t *testing.T, s *store.Store) {
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "begun", dawn))(t)
	must(s.Save(t.Context(), g.ID, 1, "Heron", []byte("two"), "first tab", later(1)))(t)
	for _, base := range []int{-1, 0, 1, 3} {
		_, err := s.Save(t.Context(), g.ID, base, "Heron", []byte("three"), "second tab", later(2))
		var c *store.Conflict
		if !errors.As(err, &c) {
			t.Fatalf("from %d: %v", base, err)
		}
		if c.Latest.Number != 2 || string(c.Latest.Text) != "two" || c.Latest.Why != "first tab" || c.Latest.At != later(1) || c.Latest.Garden != g.ID {
			t.Errorf("from %d the latest is told as %v", base, c.Latest)
		}
	}
	if r := must(s.Revision(t.Context(), g.ID, 0))(t); r.Number != 2 || string(r.Text) != "two" {
		t.Errorf("a conflict was stored: %v", r)
	}
}

func theBin(t *testing.T, s *store.Store) {
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "begun", dawn))(t)
	ok(t, s.Discard(t.Context(), g.ID, later(1)))
	ok(t, s.Discard(t.Context(), g.ID, later(2)))
	if g = must(s.Garden(t.Context(), g.ID))(t); g.Discarded != later(1) {
		t.Errorf("the garden is %v", g)
	}
	_, err := s.Save(t.Context(), g.ID, 1, "Heron", []byte("two"), "", later(3))
	refused(t, err, store.InBin)
	ok(t, s.BringBack(t.Context(), g.ID, later(4)))
	ok(t, s.BringBack(t.Context(), g.ID, later(5)))
	g = must(s.Garden(t.Context(), g.ID))(t)
	if !g.Discarded.IsZero() || g.Changed != later(4) || g.Revision != 1 {
		t.Errorf("the garden is %v", g)
	}
	if r := must(s.Revision(t.Context(), g.ID, 1))(t); string(r.Text) != "one" {
		t.Errorf("revision 1 is %q", r.Text)
	}
}

func unfitValues(t *testing.T, s *store.Store) {
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "begun", dawn))(t)
	cases := []struct{ what, name, text, why string }{
		{"no name", " ", "two", ""},
		{"a name of two lines", "Heron\nOtter", "two", ""},
		{"a name too long", strings.Repeat("é", store.MostName+1), "two", ""},
		{"a name that is no text", "\xff", "two", ""},
		{"a reason of two lines", "Heron", "two", "wider\rlid"},
		{"a reason too long", "Heron", "two", strings.Repeat("y", store.MostWhy+1)},
		{"a plan too long", "Heron", strings.Repeat("y", store.MostText+1), ""},
		{"a plan with a zero byte", "Heron", "two\x00", ""},
		{"a plan that is no text", "Heron", "two\xff", ""},
	}
	for _, c := range cases {
		_, err := s.Create(t.Context(), c.name, []byte(c.text), c.why, dawn)
		t.Log(c.what+":", refused(t, err, store.Unfit))
		_, err = s.Save(t.Context(), g.ID, 1, c.name, []byte(c.text), c.why, dawn)
		refused(t, err, store.Unfit)
	}
	if all := must(s.Gardens(t.Context()))(t); len(all) != 1 || all[0].Revision != 1 {
		t.Errorf("kept all the same: %v", all)
	}
	must(s.Save(t.Context(), g.ID, 1, strings.Repeat("é", store.MostName), []byte(strings.Repeat("y", store.MostText)), strings.Repeat("é", store.MostWhy), dawn))(t)
}

func byteForByte(t *testing.T, s *store.Store) {
	texts := []string{"", "\n", "no end", "a\r\nb\r\n", "\ufeffrootbell: 1\n", "’; DROP TABLE garden; --", "%s $1 ?1 :a", "72 mm ⌀ \u2028 \U0001f331", "\\r\\\\", "0012", "1e3"}
	g := must(s.Create(t.Context(), "Heron", []byte("first"), "", dawn))(t)
	for i, text := range texts {
		must(s.Save(t.Context(), g.ID, i+1, "Heron", []byte(text), "", dawn))(t)
		if r := must(s.Revision(t.Context(), g.ID, i+2))(t); string(r.Text) != text {
			t.Errorf("%q came back as %q", text, r.Text)
		}
	}
}

func settings(t *testing.T, s *store.Store) {
	if v := must(s.Setting(t.Context(), "paper"))(t); v != "" {
		t.Errorf("a setting that is not there is %q", v)
	}
	for _, v := range []string{"A4", "Letter", ""} {
		ok(t, s.SetSetting(t.Context(), "paper", v, dawn))
		ok(t, s.SetSetting(t.Context(), "units", "us", dawn))
		if got := must(s.Setting(t.Context(), "paper"))(t); got != v {
			t.Errorf("the setting is %q, want %q", got, v)
		}
	}
	refused(t, s.SetSetting(t.Context(), "", "A4", dawn), store.Unfit)
	refused(t, s.SetSetting(t.Context(), strings.Repeat("k", store.MostKey+1), "A4", dawn), store.Unfit)
	refused(t, s.SetSetting(t.Context(), "paper", strings.Repeat("v", store.MostValue+1), dawn), store.Unfit)
}

func outAndIn(t *testing.T, s *store.Store) {
	g := must(s.Create(t.Context(), "Heron", []byte("one\n"), "begun", dawn))(t)
	must(s.Save(t.Context(), g.ID, 1, "Otter", []byte("two"), "", later(1)))(t)
	var out strings.Builder
	ok(t, s.Export(t.Context(), g.ID, &out))
	in := must(s.Import(t.Context(), strings.NewReader(out.String()), later(2)))(t)
	if in.ID == g.ID || in.Name != "Otter" || in.Revision != 2 || in.Created != dawn || in.Changed != later(2) {
		t.Errorf("imported as %v", in)
	}
	var again strings.Builder
	ok(t, s.Export(t.Context(), in.ID, &again))
	if again.String() != out.String() {
		t.Errorf("exported once more it is\n%s\nand was\n%s", again.String(), out.String())
	}
	must(s.Save(t.Context(), in.ID, 2, "Otter", []byte("three"), "", later(3)))(t)
}
