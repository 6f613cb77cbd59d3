package jobs

import (
	"strings"
	"testing"
)

func TestARotaSaysHowFairItIs(t *testing.T) {
	mixed := []Job{{Name: "a", People: 2, Weight: 2}, {Name: "b", People: 2}, {Name: "c", People: 1}, {Name: "d", People: 3, Weight: 3}}
	for _, row := range []struct {
		name string
		ask  Ask
		sure int
		says []string
	}{
		{"all that counting can ask", Ask{Pupils: 6, Jobs: some(3, 2), Weeks: 5}, 5, []string{"least 5, most 5", "Nobody works twice", "Everyone meets", "counting"}},
		{"proved by looking at all", Ask{Pupils: 6, Jobs: some(2, 3), Weeks: 2}, 5, []string{"2 times", "2 of these", "all of them were looked at"}},
		{"pairs meet again and that is proved", Ask{Pupils: 2, Jobs: some(1, 2), Weeks: 2}, 5, []string{"Once, two", "counting"}},
		{"jobs fall short and that is proved", Ask{Pupils: 32, Jobs: some(5, 2), Weeks: 14}, 5, []string{"least 4, most 5", "20 of these", "counting"}},
		{"weights may be evened out further", Ask{Pupils: 26, Jobs: mixed, Weeks: 12}, 4, []string{"least 3, most 4", "may exist in weights", "2000000 changes"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			f := made(t, row.ask).Fairness
			text := strings.Join(f.Says(), " ")
			for _, want := range row.says {
				if !strings.Contains(text, want) {
					t.Errorf("%q lacks %q", text, want)
				}
			}
			if f.Sure != row.sure {
				t.Errorf("sure of %d places, want %d", f.Sure, row.sure)
			}
		})
	}
}
