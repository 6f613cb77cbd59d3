package web_test

import (
	"strings"
	"testing"
)

func TestSomethingIsWrong(t *testing.T) {
	o := open(t)
	for _, c := range []struct{ address, says, not string }{
		{"/g/example-fernhollow/trouble", "Tick what is seen.", "Most likely"},
		{"/g/example-fernhollow/trouble?tub=Otter&seen=hang", "Not enough to say.", "Most likely"},
		{"/g/example-fernhollow/trouble?tub=Heron&seen=pale-new", "Most likely: The newest leaves lack iron", "Not enough"},
		{"/g/example-fernhollow/trouble?seen=pale-new&seen=hot-plug", "An adult cuts the circuit at the board", ""},
		{"/g/example-fernhollow/trouble?tub=nobody&seen=<script>", "Not enough to say.", "<script>"},
		{"/g/example-saltbrook/meal", "Not yet: some questions are open.", "approved"},
		{"/g/example-saltbrook/meal?unknown=yes", "Nobody eats from this tub.", ""},
		{"/g/example-saltbrook/meal?permission=yes&unknown=no&past=yes&rinsed=yes&sprayed=no&sound=yes&ill=yes&allergies=yes&cold=yes&water=yes", "The people named below decide.", "approved"},
	} {
		body, _ := o.get(c.address, 200)
		main := body[strings.Index(body, "<main"):]
		if !strings.Contains(main, c.says) {
			t.Errorf("%s does not say %q", c.address, c.says)
		}
		if c.not != "" && strings.Contains(main, c.not) {
			t.Errorf("%s says %q", c.address, c.not)
		}
	}
	body, _ := o.get("/g/example-fernhollow/today", 200)
	if !strings.Contains(body, "/g/example-fernhollow/trouble") {
		t.Error("the page of today does not lead there")
	}
}
