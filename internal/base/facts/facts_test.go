package facts

import (
	"strings"
	"testing"
)

const head = columns + "\n"

func TestParseReadsRowsWithNumbersAndWords(t *testing.T) {
	table, err := Parse("t", head+"a.b,1.5,mm,lid,memory,a handbook,a note\nc.d,floor,,shelf,common practice,\"common practice, no source\",\n")
	if err != nil {
		t.Fatal(err)
	}
	if f := table.Get("a.b"); f.Value != 1.5 || f.Unit != "mm" || f.Says() != "memory: a handbook" {
		t.Errorf("a.b read as %+v, says %q", f, f.Says())
	}
	if f := table.Get("c.d"); f.Word != "floor" || f.Value != 0 || f.Says() != "common practice, no source" {
		t.Errorf("c.d read as %+v, says %q", f, f.Says())
	}
	if _, ok := table.Find("e.f"); ok {
		t.Error("found a row that is not there")
	}
}

func TestAWordThatReadsAsNoNumberIsAWord(t *testing.T) {
	for _, word := range []string{"nan", "inf", "-Infinity"} {
		table, err := Parse("t", head+"a,"+word+",,,memory,x,\n")
		if err != nil {
			t.Fatal(err)
		}
		if f := table.Get("a"); f.Value != 0 || f.Word != word {
			t.Errorf("%s read as %+v", word, f)
		}
	}
}

func TestParseNamesTheRowThatIsWrong(t *testing.T) {
	for _, c := range []struct{ name, rows, want string }{
		{"status", "a,1,,,guess,x,\n", `a: the status "guess"`},
		{"source", "a,1,,,memory,,\n", "a: the source is missing"},
		{"twice", "a,1,,,memory,x,\na,2,,,memory,x,\n", "a: the id stands twice"},
	} {
		if _, err := Parse("t", head+c.rows); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
	}
	if _, err := Parse("t", "id,value\n"); err == nil {
		t.Error("a wrong head was taken")
	}
}
