package quantity

import "testing"

func TestInWords(t *testing.T) {
	for n, want := range map[int]string{0: "no", 1: "one", 2: "two", 7: "seven", 12: "twelve", 13: "13", 400: "400", -1: "-1"} {
		if got := InWords(n); got != want {
			t.Errorf("%d in words is %q, want %q", n, got, want)
		}
	}
}
