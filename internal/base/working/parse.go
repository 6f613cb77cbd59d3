package working

import (
	"fmt"
	"strconv"
	"strings"
)

// node is one operation of a formula. op is 'n' for a number, 's' for a
// symbol, 'f' for a function, '-' with one argument for a sign, else + - * / ^.
type node struct {
	op   byte
	num  float64
	name string
	args []*node
}

// arity of the functions of the grammar; -1 means one or more.
var arity = map[string]int{"sqrt": 1, "exp": 1, "ln": 1, "floor": 1, "ceil": 1, "min": -1, "max": -1}

// longestFormula in bytes; it also bounds how deep brackets can nest.
const longestFormula = 4096

type parser struct {
	text string
	pos  int
}

// parse reads a formula of numbers, symbols, + - * / ^ ( ) and the functions
// sqrt min max exp ln floor ceil with the constant pi.
func parse(text string) (*node, error) {
	if len(text) > longestFormula {
		return nil, fmt.Errorf("a formula of %d bytes is longer than %d", len(text), longestFormula)
	}
	p := &parser{text: text}
	n, err := p.sum()
	if err != nil {
		return nil, err
	}
	if p.skip(); p.pos < len(p.text) {
		return nil, fmt.Errorf("formula %q: unexpected %q", text, p.text[p.pos:])
	}
	return n, nil
}

func (p *parser) skip() {
	for p.pos < len(p.text) && p.text[p.pos] == ' ' {
		p.pos++
	}
}

func (p *parser) take(marks string) byte {
	p.skip()
	if p.pos < len(p.text) && strings.IndexByte(marks, p.text[p.pos]) >= 0 {
		p.pos++
		return p.text[p.pos-1]
	}
	return 0
}

func (p *parser) sum() (*node, error)     { return p.chain("+-", p.product) }
func (p *parser) product() (*node, error) { return p.chain("*/", p.signed) }

func (p *parser) chain(ops string, next func() (*node, error)) (*node, error) {
	left, err := next()
	for err == nil {
		op := p.take(ops)
		if op == 0 {
			return left, nil
		}
		var right *node
		if right, err = next(); err == nil {
			left = &node{op: op, args: []*node{left, right}}
		}
	}
	return nil, err
}

func (p *parser) signed() (*node, error) {
	if p.take("-") == 0 {
		return p.power()
	}
	n, err := p.signed()
	if err != nil {
		return nil, err
	}
	return &node{op: '-', args: []*node{n}}, nil
}

func (p *parser) power() (*node, error) {
	base, err := p.atom()
	if err != nil || p.take("^") == 0 {
		return base, err
	}
	exponent, err := p.signed()
	if err != nil {
		return nil, err
	}
	return &node{op: '^', args: []*node{base, exponent}}, nil
}

func (p *parser) atom() (*node, error) {
	if p.take("(") != 0 {
		n, err := p.sum()
		if err == nil && p.take(")") == 0 {
			err = fmt.Errorf("formula %q: a bracket is not closed", p.text)
		}
		return n, err
	}
	p.skip()
	start := p.pos
	for p.pos < len(p.text) && isWord(p.text[p.pos]) {
		p.pos++
	}
	word := p.text[start:p.pos]
	switch {
	case word == "":
		return nil, fmt.Errorf("formula %q: a number or symbol is missing at %d", p.text, start)
	case word[0] >= '0' && word[0] <= '9' || word[0] == '.':
		return p.number(word)
	case p.take("(") != 0:
		return p.call(word)
	}
	return &node{op: 's', name: word}, nil
}

// number takes plain decimals only: what ParseFloat reads beside them, such as
// 1e5, a pencil does not write.
func (p *parser) number(word string) (*node, error) {
	if strings.Trim(word, "0123456789.") != "" {
		return nil, fmt.Errorf("formula %q: %s is no plain number", p.text, word)
	}
	v, err := strconv.ParseFloat(word, 64)
	if err != nil {
		return nil, fmt.Errorf("formula %q: %w", p.text, err)
	}
	return &node{op: 'n', num: v}, nil
}

func (p *parser) call(name string) (*node, error) {
	want, known := arity[name]
	if !known {
		return nil, fmt.Errorf("formula %q: %s is no function of the grammar", p.text, name)
	}
	n := &node{op: 'f', name: name}
	for {
		arg, err := p.sum()
		if err != nil {
			return nil, err
		}
		n.args = append(n.args, arg)
		if p.take(",") != 0 {
			continue
		}
		if p.take(")") == 0 {
			return nil, fmt.Errorf("formula %q: %s( is not closed", p.text, name)
		}
		if want >= 0 && len(n.args) != want {
			return nil, fmt.Errorf("formula %q: %s takes %d", p.text, name, want)
		}
		return n, nil
	}
}

func isWord(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '.'
}
