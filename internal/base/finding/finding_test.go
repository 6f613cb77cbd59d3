package finding

import (
	"encoding/json"
	"testing"
)

func TestSortPutsStopsFirstAndKeepsTheOrderWithinALevel(t *testing.T) {
	all := []Finding{{Code: "a"}, {Level: Warn, Code: "b"}, {Level: Stop, Code: "c"}, {Level: Warn, Code: "d"}}
	Sort(all)
	got := ""
	for _, f := range all {
		got += f.Code
	}
	if got != "cbda" {
		t.Errorf("order %q, want cbda", got)
	}
	if Worst(all) != Stop || Worst(nil) != Note {
		t.Errorf("worst of all %v, of none %v", Worst(all), Worst(nil))
	}
}

func TestLevelIsWrittenAsItsWord(t *testing.T) {
	text, err := json.Marshal(Finding{Level: Stop})
	if err != nil {
		t.Fatal(err)
	}
	const want = `{"level":"stop","code":"","field":"","line":0,"column":0,"text":"","hint":""}`
	if string(text) != want {
		t.Errorf("got %s, want %s", text, want)
	}
}
