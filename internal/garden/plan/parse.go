package plan

import (
	"cmp"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
)

const priceRange = "0 to 100000"

var itemName = regexp.MustCompile(`^[a-z0-9]+([_-][a-z0-9]+)*$`)

// mostProblems is how many problems are told at once; more help nobody.
const mostProblems = 100

// Parse reads a plan document. name is what the text is called in messages.
// The plan is nil exactly when there are problems; these come in the order of
// their places, all at once.
func Parse(name string, text []byte) (*Plan, []Problem) {
	src, unreadable := newSource(text)
	if unreadable != nil {
		return nil, []Problem{*unreadable}
	}
	root, problems, broken := readTree(src)
	if root == nil && len(problems) == 0 {
		return nil, []Problem{{Line: 1, Column: 1, What: "the plan is empty", Hint: "'rootbell new' writes one to begin with"}}
	}
	d := &decoder{broken: broken}
	p := &Plan{Name: name, text: slices.Clone(text), root: root}
	if root != nil {
		d.document(p, root)
	}
	problems = append(withFields(root, problems), d.problems...)
	if len(problems) == 0 {
		return p, nil
	}
	return nil, inOrder(problems)
}

func (d *decoder) document(p *Plan, root *node) {
	if root.shape == spoiled {
		return
	}
	if root.shape != mapping {
		d.say(root.at, "", "a plan begins with keys, such as rootbell: 1", "'rootbell new' writes one to begin with")
		return
	}
	version := root.child("rootbell")
	if version != nil && version.shape == scalar && version.text != strconv.Itoa(Format) {
		d.version(version)
		return
	}
	d.group(reflect.ValueOf(p).Elem(), root, "")
	d.tubNames(p, root)
}

// version refuses a document of another format, whose keys may mean anything.
func (d *decoder) version(n *node) {
	hint := "write rootbell: 1"
	if number, err := strconv.Atoi(n.text); err == nil && number > Format {
		hint = "it was written for a newer program; use that one"
	}
	d.say(n.at, "rootbell", "rootbell: format "+quote(n.text)+" is not known; this program reads format 1", hint)
}

// tubNames asks for names that stay apart in file names, on any disk.
func (d *decoder) tubNames(p *Plan, root *node) {
	tubs := root.child("tubs")
	for i := range p.Tubs {
		for j := range i {
			if p.Tubs[i].Name == "" || FileName(p.Tubs[i].Name) != FileName(p.Tubs[j].Name) {
				continue
			}
			second, first := tubs.items[i].child("name"), tubs.items[j].child("name")
			d.say(second.at, "tubs["+strconv.Itoa(i)+"].name", "name: there is a tub "+quote(p.Tubs[j].Name)+" in line "+strconv.Itoa(first.at.line)+" already", "give each tub a name of its own; case, spaces and hyphens do not tell names apart")
			break
		}
	}
}

// FileName is a tub's name without regard to case, with hyphens for blanks. Two
// tubs of one plan never share it.
func FileName(name string) string {
	return strings.ToLower(strings.ReplaceAll(name, " ", "-"))
}

func inOrder(problems []Problem) []Problem {
	slices.SortStableFunc(problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	problems = slices.Compact(problems)
	return problems[:min(len(problems), mostProblems)]
}

// readText takes metric or us.
func readSystem(text string) (quantity.System, error) {
	word, err := readWord(text, Key{Words: []string{"metric", "us"}})
	if err != nil {
		return quantity.Metric, err
	}
	if word == "us" {
		return quantity.US, nil
	}
	return quantity.Metric, nil
}
