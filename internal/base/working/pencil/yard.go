package pencil

import (
	"errors"
	"fmt"
	"math"
	"math/big"
)

// yard is a shunting-yard: results wait on one siding, marks on the other.
type yard struct {
	values  map[string]float64
	results []value
	marks   []mark
	wanted  bool // a number, symbol, sign or bracket must come next
}

// mark is an operator, a sign "neg" or an open bracket; a bracket knows its
// function and how many numbers it holds so far.
type mark struct {
	op       string
	function string
	count    int
}

// rank is how strongly an operator binds; brackets hold everything back.
var rank = map[string]int{"(": 0, "+": 1, "-": 1, "*": 2, "/": 2, "neg": 3, "^": 4}

// takes is how many numbers a function takes; 0 means one or more.
var takes = map[string]int{"sqrt": 1, "exp": 1, "ln": 1, "floor": 1, "ceil": 1, "min": 0, "max": 0}

// shunt takes the next token; opens says that a bracket follows it.
func (y *yard) shunt(t string, opens bool) error {
	c := t[0]
	switch {
	case isDigit(c) || c == '.':
		return y.number(t)
	case isLetter(c):
		return y.word(t, opens)
	case c == '(':
		return y.open("")
	case c == ')':
		return y.close()
	case c == ',':
		return y.comma()
	}
	return y.operator(t)
}

func (y *yard) place(v value) error {
	if !y.wanted {
		return errors.New("an operator is missing between two numbers")
	}
	y.wanted = false
	y.results = append(y.results, v)
	return nil
}

func (y *yard) number(t string) error {
	r, ok := new(big.Rat).SetString(t)
	if !ok {
		return fmt.Errorf("%s is no number", t)
	}
	return y.place(of(r))
}

func (y *yard) word(t string, opens bool) error {
	if _, known := takes[t]; known && opens {
		if !y.wanted {
			return errors.New("an operator is missing before " + t)
		}
		y.marks = append(y.marks, mark{op: "function", function: t})
		return nil
	}
	if v, given := y.values[t]; given {
		return y.place(near(v))
	}
	if t == "pi" {
		return y.place(near(math.Pi))
	}
	return fmt.Errorf("%s has no value", t)
}

func (y *yard) open(function string) error {
	if n := len(y.marks); n > 0 && y.marks[n-1].op == "function" {
		function = y.marks[n-1].function
		y.marks = y.marks[:n-1]
	}
	if !y.wanted {
		return errors.New("an operator is missing before a bracket")
	}
	y.marks = append(y.marks, mark{op: "(", function: function, count: 1})
	return nil
}

func (y *yard) operator(t string) error {
	if t == "-" && y.wanted {
		y.marks = append(y.marks, mark{op: "neg"})
		return nil
	}
	if rank[t] == 0 {
		return fmt.Errorf("%q means nothing", t)
	}
	if y.wanted {
		return fmt.Errorf("a number is missing before %s", t)
	}
	// ^ lets an earlier ^ wait: its right one comes first.
	least := rank[t]
	if t == "^" {
		least++
	}
	if err := y.workDown(least); err != nil {
		return err
	}
	y.marks = append(y.marks, mark{op: t})
	y.wanted = true
	return nil
}

// workDown does the operators that bind at least so strongly.
func (y *yard) workDown(least int) error {
	for n := len(y.marks); n > 0 && rank[y.marks[n-1].op] >= least; n-- {
		if err := y.do(y.marks[n-1].op); err != nil {
			return err
		}
		y.marks = y.marks[:n-1]
	}
	return nil
}

func (y *yard) do(op string) error {
	n := len(y.results)
	if op == "neg" {
		y.results[n-1] = y.results[n-1].negated()
		return nil
	}
	v, err := y.results[n-2].with(op, y.results[n-1])
	y.results = append(y.results[:n-2], v)
	return err
}

func (y *yard) comma() error {
	if y.wanted {
		return errors.New("a number is missing before a comma")
	}
	if err := y.workDown(1); err != nil {
		return err
	}
	n := len(y.marks)
	if n == 0 || y.marks[n-1].function == "" {
		return errors.New("a comma outside a function")
	}
	y.marks[n-1].count++
	y.wanted = true
	return nil
}

func (y *yard) close() error {
	if y.wanted {
		return errors.New("a number is missing before a closing bracket")
	}
	if err := y.workDown(1); err != nil {
		return err
	}
	n := len(y.marks)
	if n == 0 {
		return errors.New("a bracket closes that was not opened")
	}
	m := y.marks[n-1]
	y.marks = y.marks[:n-1]
	if m.function == "" {
		return nil
	}
	if want := takes[m.function]; want > 0 && m.count != want {
		return fmt.Errorf("%s takes %d", m.function, want)
	}
	from := len(y.results) - m.count
	v, err := apply(m.function, y.results[from:])
	y.results = append(y.results[:from], v)
	return err
}

func (y *yard) end() (value, error) {
	if y.wanted {
		return value{}, errors.New("a number is missing at the end")
	}
	if err := y.workDown(1); err != nil {
		return value{}, err
	}
	if len(y.marks) > 0 {
		return value{}, errors.New("a bracket is not closed")
	}
	return y.results[0], nil
}
