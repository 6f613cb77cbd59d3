package cli

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden"
)

func explainCommand(s Streams) *cobra.Command {
	var q question
	c := &cobra.Command{
		Use:   "explain PLAN [KEY]",
		Short: "The working of one number; without KEY the keys",
		Long:  "Shows how a number came about: formula, numbers put in, result and source, then\nthe same for each number that went in. Without KEY it lists the keys.\n" + exits,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 2 {
				return usageError{fmt.Sprintf("one plan and one key at a time, not %d words", len(args)), "rootbell explain PLAN KEY"}
			}
			return onePlan(c, args[:min(len(args), 1)])
		},
		RunE: func(c *cobra.Command, args []string) error {
			a, err := q.assess(c, s, args[0], garden.StageMix|garden.StageSeason|garden.StageChoose|garden.StageClass)
			if err != nil {
				return err
			}
			if len(args) == 1 {
				return q.keys(s, a)
			}
			n, ok := a.Book.Find(args[1])
			if !ok {
				return usageError{fmt.Sprintf("there is no number %s", args[1]), nearKeys(a, args[1])}
			}
			return q.explain(s, a, n)
		},
	}
	q.flags(c)
	return c
}

// keys lists the keys of all numbers.
func (q *question) keys(s Streams, a *garden.Assessment) error {
	if q.json {
		keys := []string{}
		for _, n := range a.Numbers {
			keys = append(keys, n.Key)
		}
		return writeJSON(s.Out, keys)
	}
	var b bytes.Buffer
	for _, n := range a.Numbers {
		fmt.Fprintf(&b, "%s\n", n.Key)
	}
	_, err := s.Out.Write(b.Bytes())
	return err
}

// nearKeys names keys like one not found, else those with the same last word.
func nearKeys(a *garden.Assessment, key string) string {
	var keys, same []string
	last := key[strings.LastIndex(key, ".")+1:]
	for _, n := range a.Numbers {
		keys = append(keys, n.Key)
		if last != "" && strings.Contains(n.Key, last) {
			same = append(same, n.Key)
		}
	}
	shortestFirst(same)
	same = same[:min(len(same), mostNear)]
	otherwise := "'rootbell explain PLAN' lists the keys"
	if len(same) > 0 {
		otherwise = "perhaps " + strings.Join(same, ", ")
	}
	return perhaps(key, keys, otherwise)
}

// explain writes a number's working and that of every number behind it, each
// once, in the order in which they are needed.
func (q *question) explain(s Streams, a *garden.Assessment, n working.Number) error {
	chain := unfold(n, map[string]bool{})
	if q.json {
		byKey := map[string]garden.Number{}
		for _, shown := range a.Numbers {
			byKey[shown.Key] = shown
		}
		out := []garden.Number{}
		for _, link := range chain {
			out = append(out, byKey[link.Key])
		}
		return writeJSON(s.Out, out)
	}
	var b bytes.Buffer
	for i, link := range chain {
		if i > 0 {
			b.WriteByte('\n')
		}
		explainOne(&b, link, a.Plan.Units)
	}
	_, err := s.Out.Write(b.Bytes())
	return err
}

// unfold lists a number and all behind it, breadth before depth.
func unfold(n working.Number, seen map[string]bool) []working.Number {
	queue := []working.Number{n}
	var out []working.Number
	for len(queue) > 0 {
		n, queue = queue[0], queue[1:]
		if seen[n.Key] {
			continue
		}
		seen[n.Key] = true
		out = append(out, n)
		queue = append(queue, n.Inputs...)
	}
	return out
}

func explainOne(b *bytes.Buffer, n working.Number, system quantity.System) {
	shown := n.Show(system)
	value := strings.TrimSpace(quantity.FormatNumber(shown.Value, shown.Decimals) + " " + shown.Unit)
	wrap(b, "", fmt.Sprintf("%s = %s", n.Name, value))
	wrap(b, "  key      ", n.Key)
	if n.Law != nil {
		wrap(b, "  formula  ", n.Symbol+" = "+shown.Formula)
		for i, w := range n.Law.Where {
			if i < len(n.Inputs) {
				in := n.Inputs[i].Show(system)
				wrap(b, "           ", fmt.Sprintf("%s  %s, %s", w.Name, w.Meaning, strings.TrimSpace(quantity.FormatNumber(in.Value, in.Decimals)+" "+in.Unit)))
			}
		}
		wrap(b, "  put in   ", shown.PutIn+" = "+quantity.FormatNumber(shown.Value, shown.Decimals))
	}
	if shown.Low != shown.High {
		wrap(b, "  range    ", fmt.Sprintf("%s to %s: each measure off by the tape's error, combined as the root of the sum of squares", quantity.FormatNumber(shown.Low, shown.Decimals), quantity.FormatNumber(shown.High, shown.Decimals)))
	}
	wrap(b, "  basis    ", string(n.Basis))
	wrap(b, "  source   ", n.Source)
}
