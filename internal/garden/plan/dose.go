package plan

import (
	"strings"

	"rootbell/internal/base/quantity"
)

// Dose is the maker's dose of a bottle or bag for the tub's water, as typed. One
// of the two is set; the zero value is one left out.
type Dose struct {
	MLPerL float64 // of a liquid, mL for each litre
	GPerL  float64 // of a dry one, g for each litre
	Text   string
}

// Set tells whether a dose was given.
func (d Dose) Set() bool { return d.Text != "" }

// strongestDose is mL or g for each litre that no maker asks for.
const strongestDose = 50

// readText takes so much for so much water: 2 mL/L, 5 mL per 10 L, 1 g/L.
func (d *Dose) readText(text string, _ Key) error {
	top, bottom, ok := cutDose(strings.Join(strings.Fields(text), " "))
	if !ok {
		return bad(quote(text)+" is not a dose", "write so much for so much water, such as 2 mL/L, 5 mL per 10 L or 1 g/L")
	}
	water, err := quantity.Parse(quantity.Volume, bottom)
	if err != nil {
		return err
	}
	litres := quantity.Litre.From(water)
	if litres <= 0 {
		return bad(quote(text)+" is a dose for no water", "write it for a litre, such as 2 mL/L")
	}
	out := Dose{Text: text}
	if grams, err := quantity.Parse(quantity.SmallMass, top); err == nil {
		out.GPerL = quantity.Gram.From(grams) / litres
	} else if millilitres, err := quantity.Parse(quantity.SmallVolume, top); err == nil {
		out.MLPerL = quantity.Millilitre.From(millilitres) / litres
	} else {
		return err
	}
	if each := out.MLPerL + out.GPerL; each <= 0 || each > strongestDose {
		return bad(quote(text)+" is no dose of a feed", "it is more than nothing and at most 50 mL or g for each litre")
	}
	*d = out
	return nil
}

// cutDose parts a dose into what is given and the water it is for, each with a
// number; the water's may be left out.
func cutDose(text string) (top, bottom string, ok bool) {
	at, long := strings.LastIndex(text, " per "), len(" per ")
	if at < 0 {
		at, long = strings.LastIndexByte(text, '/'), 1
	}
	if at <= 0 || at+long >= len(text) {
		return "", "", false
	}
	top, bottom = strings.TrimSpace(text[:at]), strings.TrimSpace(text[at+long:])
	if bottom == "" {
		return "", "", false
	}
	if first := bottom[0]; first < '0' || first > '9' {
		bottom = "1 " + bottom
	}
	return top, bottom, true
}

// DoseForm is the regular expression of a dose for editors, which is looser than
// what is read.
func DoseForm() string { return `^[^/]*[0-9½¼¾][^/]*(/[0-9]+ *[^/]*)?(/| per )[^/]+$` }
