package cli

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"rootbell/internal/garden"
)

const todayLong = `Says what there is to do on a day, in the order of a morning: look, listen,
read the level, top up, wait, only then measure. It goes by the plan, the
school's calendar and the readings of --readings; without readings it says what
can be said from the plan alone. It doses neither acid nor salts.
`

func todayCommand(s Streams) *cobra.Command {
	return stage{name: "today", short: "What there is to do on a day", long: todayLong, asks: garden.StageMix, report: morning, document: morningJSON}.command(s)
}

// morningJSON is the part of the assessment's document that is about the day.
func morningJSON(a *garden.Assessment) any {
	type tub struct {
		Name  string           `json:"name"`
		Today *garden.TubToday `json:"today"`
	}
	out := struct {
		Format int           `json:"format"`
		Garden string        `json:"garden"`
		On     string        `json:"on"`
		Today  *garden.Today `json:"today"`
		Tubs   []tub         `json:"tubs"`
	}{a.Format, a.Garden, a.On, a.Today, nil}
	for _, t := range a.Tubs {
		out.Tubs = append(out.Tubs, tub{t.Name, t.Today})
	}
	return out
}

// morning writes the day's list for the terminal.
func morning(w io.Writer, a *garden.Assessment) error {
	var b bytes.Buffer
	t := a.Today
	bold, rest := t.Answer()
	wrap(&b, "", plain(a.Garden+": "+t.Day(a)))
	b.WriteByte('\n')
	wrap(&b, "", plain(bold+" "+rest))
	if t.Back != nil {
		wrap(&b, "", plain(fmt.Sprintf("First day after %d closed days: look before anything is touched.", t.Back.Days())))
	}
	b.WriteByte('\n')
	n := 0
	for _, s := range append(t.Steps[:len(t.Steps):len(t.Steps)], t.More...) {
		n++
		wrap(&b, fmt.Sprintf("%2d. ", n), plain(s.Head))
		for _, l := range s.Lines {
			wrap(&b, "    ", plain(lineText(l)))
		}
	}
	if words := t.AheadWords(); words != "" {
		b.WriteByte('\n')
		wrap(&b, "", plain(words))
		for _, l := range t.Ahead.Lines {
			wrap(&b, "    ", plain(lineText(l)))
		}
	}
	b.WriteString("\nSomething is wrong\n------------------\n")
	for _, x := range t.Wrong {
		wrap(&b, "    ", plain(x.See+": "+x.Do))
	}
	b.WriteString("\nPlease do not\n-------------\n")
	for _, x := range t.Donts {
		wrap(&b, "    ", plain(x))
	}
	_, err := w.Write(b.Bytes())
	return err
}

// lineText is what a step is for one tub, as sentences.
func lineText(l garden.Line) string {
	var parts []string
	if l.Tub != "" {
		parts = append(parts, l.Tub+":")
	}
	if l.Act != "" {
		parts = append(parts, l.Act+".")
	}
	if l.Why != "" {
		parts = append(parts, l.Why)
	}
	if l.How != "" {
		parts = append(parts, "("+l.How+")")
	}
	return strings.Join(parts, " ")
}
