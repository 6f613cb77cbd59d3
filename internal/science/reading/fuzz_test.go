package reading

import (
	"bytes"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// Whatever file comes in: no panic, a place for each problem, no row beside a
// problem, and what is read can be written and read again.
func FuzzReadCSV(f *testing.F) {
	f.Add([]byte("tub,moment,pH\nHeron,2027-01-11T08:40Z,6.1\n"))
	f.Add([]byte("\ufefftub;moment;EC (ppm 500);as typed;done\r\nHeron;2027-01-11 08:40;700;EC: 7\\;00;fed; planted\r\n"))
	f.Add([]byte("tub\tmoment\tseen\nHeron\t2027-01-11T08:40Z\t\"'=a\n\"\"b\"\n"))
	f.Add([]byte("name,tub\n\"x\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		table, problems := ReadCSV(text, Import{By: teams})
		for _, p := range problems {
			if p.Line < 1 || p.Column < 1 || p.What == "" || p.Line > bytes.Count(text, []byte("\n"))+2 {
				t.Errorf("no place or words: %+v", p)
			}
		}
		if len(problems) > 0 {
			if len(table.Rows) > 0 {
				t.Error("rows beside problems")
			}
			return
		}
		out, err := CSV(table.Rows, time.UTC)
		if err != nil {
			t.Fatal(err)
		}
		again, problems := ReadCSV(out, Import{By: teams})
		if len(problems) > 0 {
			t.Fatalf("%v\n%s", problems, out)
		}
		if diff := cmp.Diff(table.Rows, again.Rows, cmp.Comparer(time.Time.Equal)); diff != "" {
			t.Errorf("%s\n%s", diff, out)
		}
	})
}
