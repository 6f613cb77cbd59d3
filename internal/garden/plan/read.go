package plan

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
)

func bad(what, hint string) error { return &quantity.Error{What: what, Hint: hint} }

// readText takes yes, no, true and false, in any case.
func (o *Opt[T]) readText(text string, f Key) error {
	switch into := any(o).(type) {
	case *Tick:
		return readTick(into, text)
	case *Whole:
		number, err := readWhole(text, f)
		if err == nil {
			*into = Whole{Value: number, Given: true}
		}
		return err
	case *Clock:
		return readClock(into, text)
	}
	return bad("nothing can be written here", "leave it out")
}

func readTick(into *Tick, text string) error {
	switch strings.ToLower(text) {
	case "yes", "true":
		*into = Tick{Value: true, Given: true}
	case "no", "false":
		*into = Tick{Value: false, Given: true}
	default:
		return bad(quote(text)+" is neither yes nor no", "write yes or no")
	}
	return nil
}

// readClock takes 08:30, 8:30, 3:30 pm and 9 pm.
func readClock(into *Clock, text string) error {
	wrong := bad(quote(text)+" is not a time of day", `write it like "08:30"`)
	clean := strings.ToLower(strings.ReplaceAll(text, " ", ""))
	half := ""
	if strings.HasSuffix(clean, "am") || strings.HasSuffix(clean, "pm") {
		clean, half = clean[:len(clean)-2], clean[len(clean)-2:]
	}
	hours, minutes, two := strings.Cut(clean, ":")
	if !two && half != "" {
		minutes, two = "00", true
	}
	if !two || !isDigits(hours) || !isDigits(minutes) || len(hours) > 2 || len(minutes) != 2 {
		return wrong
	}
	h, _ := strconv.Atoi(hours)
	m, _ := strconv.Atoi(minutes)
	if half != "" {
		if h < 1 || h > 12 {
			return wrong
		}
		h %= 12
		if half == "pm" {
			h += 12
		}
	}
	if h > 24 || m > 59 || h == 24 && m > 0 {
		return wrong
	}
	*into = Clock{Value: Minutes(60*h + m), Given: true}
	return nil
}

// readText takes a day as 2027-01-11.
func (d *Date) readText(text string, _ Key) error {
	day, err := time.Parse(time.DateOnly, text)
	switch {
	case err != nil:
		return bad(quote(text)+" is not a day of the calendar", "write year-month-day, such as 2027-01-11")
	case day.Year() < 2000 || day.Year() > 2100:
		return bad(quote(text)+" is not in this century", "check the year")
	}
	*d = Date{day.Year(), day.Month(), day.Day()}
	return nil
}

// readText takes best or a number of plants.
func (p *Plants) readText(text string, f Key) error {
	if strings.EqualFold(text, "best") {
		*p = Plants{Best: true, Given: true}
		return nil
	}
	number, err := readWhole(text, f)
	if err != nil {
		return bad(quote(text)+" is not a number of plants", "write best, or a whole number from "+f.In)
	}
	*p = Plants{Number: number, Given: true}
	return nil
}

// readNode takes one radius, or the two of top and base.
func (c *Corners) readNode(d *decoder, n *node, f Key, path string) {
	if n.shape == sequence {
		var two Pair
		d.list(reflect.ValueOf(&two).Elem(), n, f, path)
		c.Top, c.Base = two[0], two[1]
		return
	}
	d.value(reflect.ValueOf(&c.Top).Elem(), n, f, path)
	c.Base = c.Top
}

func (t *Tap) readWord(word string) bool {
	t.Unknown = strings.EqualFold(word, "unknown")
	return t.Unknown
}

func (d Disc) check() (index int, what, hint string) {
	if d[2].Value <= 0 {
		return 2, "a circle needs a radius", "write x, y, radius"
	}
	return 0, "", ""
}

func (b Box) check() (index int, what, hint string) {
	for i := range 2 {
		if b[i+2].Value <= b[i].Value {
			return i + 2, "the rectangle has no area", "write x0, y0, x1, y1 with x1 right of x0 and y1 above y0"
		}
	}
	return 0, "", ""
}

func (l Line) check() (index int, what, hint string) {
	if l[0][0].Value == l[1][0].Value && l[0][1].Value == l[1][1].Value {
		return 1, "the rib begins and ends in one point", "write the two ends"
	}
	return 0, "", ""
}

// readNode takes nutrients by their symbols, each with its share.
func (l *Label) readNode(d *decoder, n *node, f Key, path string) {
	if n.shape != mapping {
		d.say(n.at, path, "label: a group of nutrients is wanted here", "write {N: 6.5 %, K2O: 27 %}")
		return
	}
	*l = Label{}
	readKeyed(d, n, f, path, *l, oneOfNutrients(Nutrients()))
}

// readNode takes nutrients by their symbols, each with its content.
func (t *Target) readNode(d *decoder, n *node, f Key, path string) {
	if n.shape != mapping {
		d.say(n.at, path, "target: a group of nutrients is wanted here", "write {N: 150 mg/L, P: 31 mg/L, K: 210 mg/L}")
		return
	}
	*t = Target{}
	readKeyed(d, n, f, path, *t, oneOfNutrients(Aims()))
}

// oneOfNutrients says what is wrong with a key that is none of the symbols.
func oneOfNutrients(symbols []string) func(key string) (what, hint string) {
	return func(key string) (string, string) {
		if slices.Contains(symbols, key) {
			return "", ""
		}
		hint := "write " + list(symbols)
		if near := nearest(key, symbols); near != "" {
			hint = "did you mean " + near + "?"
		}
		return "the nutrient " + quote(key) + " is not known", hint
	}
}

// readNode takes the teacher's own prices by item.
func (p *Prices) readNode(d *decoder, n *node, f Key, path string) {
	if n.shape != mapping {
		d.say(n.at, path, "prices: a group of items is wanted here", "write {tub: 12.00, saw: 14.00}")
		return
	}
	*p = Prices{}
	f.In = priceRange
	readKeyed(d, n, f, path, *p, func(key string) (string, string) {
		if itemName.MatchString(key) {
			return "", ""
		}
		return quote(key) + " is not an item of the shopping list", "write it in small letters, such as tub or air_pump"
	})
}

// readKeyed reads a mapping with keys of the teacher's choice. accept says what
// is wrong with a key, or nothing.
func readKeyed[T any](d *decoder, n *node, f Key, path string, into map[string]T, accept func(string) (what, hint string)) {
	first := map[string]int{}
	for _, e := range d.joined(n, path) {
		at := join(path, e.key)
		if line, twice := first[e.key]; twice {
			d.say(e.at, at, "the key "+quote(e.key)+" is here a second time; the first is in line "+strconv.Itoa(line), "keep one of the two")
			continue
		}
		first[e.key] = e.at.line
		if what, hint := accept(e.key); what != "" {
			d.say(e.at, at, what, hint)
			continue
		}
		before := len(d.problems)
		var value T
		d.value(reflect.ValueOf(&value).Elem(), e.value, f, at)
		if e.value.shape == scalar && len(d.problems) == before {
			into[e.key] = value
		}
	}
}
