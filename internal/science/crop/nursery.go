package crop

import (
	"math"
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/finding"
)

// Emergence is how seed comes up at a temperature.
type Emergence struct {
	Days   float64 // until seedlings show
	Normal float64 // share of seed that makes a sound seedling, beside the best temperature, 0 to 1
}

// Emergence is how the crop's seed comes up at a temperature in °C, between the
// lines of the table that it takes. ok is false for a crop that comes as a
// plant, outside the table, and where nothing grows.
func (c Crop) Emergence(tempC float64) (e Emergence, ok bool) {
	row, known := c.growthRow("emergence")
	if !known || row.Word == "none" {
		return e, false
	}
	days, _ := GrowthFacts.Find(facts.ID("emergence." + row.Word + ".days"))
	e.Days, ok = between(tableOf(days.Word), tempC)
	if !ok {
		return Emergence{}, false
	}
	e.Normal = 1
	if normal, counted := GrowthFacts.Find(facts.ID("emergence." + row.Word + ".normal")); counted {
		e.Normal = normalAt(tableOf(normal.Word), tempC)
	}
	return e, e.Normal > 0
}

// normalAt is beside the best of the table; beyond its ends the end holds.
func normalAt(table [][2]float64, tempC float64) float64 {
	best := 0.0
	for _, row := range table {
		best = max(best, row[1])
	}
	first, last := table[0], table[len(table)-1]
	share, ok := between(table, tempC)
	switch {
	case ok:
	case tempC < first[0]:
		share = first[1]
	default:
		share = last[1]
	}
	return share / best
}

// tableOf reads '5:15 10:7' as rows of a temperature and a value, rising.
func tableOf(word string) [][2]float64 {
	var out [][2]float64
	for _, pair := range strings.Fields(word) {
		left, right, _ := strings.Cut(pair, ":")
		at, err := strconv.ParseFloat(left, 64)
		value, errValue := strconv.ParseFloat(right, 64)
		if err == nil && errValue == nil {
			out = append(out, [2]float64{at, value})
		}
	}
	return out
}

// between is the straight line between two rows of a table.
func between(table [][2]float64, x float64) (float64, bool) {
	for i, row := range table {
		if x == row[0] {
			return row[1], true
		}
		if i > 0 && table[i-1][0] < x && x < row[0] {
			before := table[i-1]
			return before[1] + (row[1]-before[1])*(x-before[0])/(row[0]-before[0]), true
		}
	}
	return 0, false
}

// Seed is what a class sows.
type Seed struct {
	Germination float64 // of the packet, 0 to 1; see Crop.Germination
	YearsOld    float64 // since the packet's year
	TempC       float64 // of the plugs until seedlings show
}

// Germination is that of a packet which names none, 0 to 1.
func (c Crop) Germination() float64 { return c.growthValue("germination", 0) / 100 }

// SeedsInACell is how many seeds are usually sown in a cell.
func (c Crop) SeedsInACell() int { return int(c.growthValue("seeds", 1)) }

// Chance is that one seed becomes a seedling which goes into the tub, 0 to 1:
// the packet's figure less what age takes, the temperature's part of it, and
// what a class brings through.
func (c Crop) Chance(s Seed) float64 {
	normal := 1.0
	if row, known := c.growthRow("emergence"); known && row.Word != "none" {
		e, grows := c.Emergence(s.TempC)
		if !grows {
			return 0
		}
		normal = e.Normal
	}
	fresh := max(0, s.Germination-grown(factNurseryAgeLoss)/100*s.YearsOld)
	return min(1, fresh) * normal * grown(factNurserySurvival) / 100
}

// Spares is how many seedlings are kept beside those in the tub.
func Spares(plants int) int {
	return int(math.Ceil(float64(plants)*grown(factNurserySpares)/100 - 1e-9))
}

// NurseryPPFD is the light that seedlings want, in µmol/m²/s.
func NurseryPPFD() float64 { return grown(factNurseryLight) }

// CheckNursery is what there is to say about sowing at a temperature; field is
// the place in the plan that would change it.
func (c Crop) CheckNursery(field string, tempC float64) []finding.Finding {
	row, known := c.growthRow("emergence")
	if !known || row.Word == "none" {
		return nil
	}
	says := func(code, text, hint string) []finding.Finding {
		return []finding.Finding{{Level: finding.Warn, Code: code, Field: field, Text: text, Hint: hint}}
	}
	e, grows := c.Emergence(tempC)
	best := c.bestNursery()
	hint := "Sow where it is about " + strconv.FormatFloat(best, 'f', -1, 64) + " °C until green shows; never on a radiator."
	switch {
	case !grows:
		return says("nursery-none", "At "+degrees(tempC)+" no figures are known for "+c.Name+", or nothing comes up.", hint)
	case e.Normal < grown(factNurseryNormalWarn)/100:
		return says("nursery-poor", "At "+degrees(tempC)+" "+c.Name+" makes "+strconv.Itoa(int(math.Round(100*e.Normal)))+" sound seedlings where it makes 100 at its best.", hint)
	case e.Days > grown(factNurseryDaysWarn):
		return says("nursery-slow", "At "+degrees(tempC)+" "+c.Name+" takes about "+strconv.Itoa(int(math.Round(e.Days)))+" days until green shows.", hint)
	}
	return nil
}

// bestNursery is the temperature from 10 to 30 °C that brings the most sound
// seedlings, and of several the quickest.
func (c Crop) bestNursery() float64 {
	best, at := Emergence{Days: math.Inf(1)}, 0.0
	for t := 10.0; t <= 30; t++ {
		e, ok := c.Emergence(t)
		if !ok {
			continue
		}
		// Within two in a hundred the quicker one is better.
		if e.Normal > best.Normal+0.02 || e.Normal > best.Normal-0.02 && e.Days < best.Days {
			best, at = e, t
		}
	}
	return at
}

func degrees(tempC float64) string { return strconv.FormatFloat(tempC, 'f', -1, 64) + " °C" }
