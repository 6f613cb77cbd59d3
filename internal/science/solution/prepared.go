package solution

import (
	"fmt"

	"rootbell/internal/base/leastsq"
)

// prepared is a shelf made ready for a target at any strength and over any
// water: the search for an EC fits it some dozens of times.
type prepared struct {
	shelf, useful []Fertiliser
	at            []int      // places on the shelf of what is useful
	rows          []Nutrient // that are aimed at
	shares        leastsq.Matrix
	fits          *leastsq.Repeated

	grams, right, weights []float64
}

// prepare makes the shelf ready for what the target names.
func (t Target) prepare(shelf []Fertiliser) (*prepared, error) {
	p := &prepared{shelf: shelf}
	p.useful, p.at = t.useful(shelf)
	for _, n := range aims {
		if t.MgL[n] > 0 {
			p.rows = append(p.rows, n)
		}
	}
	p.shares = leastsq.NewMatrix(len(p.rows), len(p.useful))
	for i, n := range p.rows {
		for j, f := range p.useful {
			p.shares.Set(i, j, 1000*f.Share[n])
		}
	}
	var err error
	if p.fits, err = leastsq.NewRepeated(p.shares); err != nil {
		return nil, fmt.Errorf("solution: the shelf: %w", err)
	}
	p.grams = make([]float64, len(p.useful))
	p.right, p.weights = make([]float64, len(p.rows)), make([]float64, len(p.rows))
	return p, nil
}

// fit is FitTo for a target that names the same nutrients. Limits that hold by
// themselves need no second search.
func (p *prepared) fit(t Target, base Content) (Fit, error) {
	for i, n := range p.rows {
		p.right[i], p.weights[i] = max(t.MgL[n]-base[n], 0), weightOf(n)/t.MgL[n]
	}
	if err := p.fits.Fit(p.grams, p.right, p.weights); err != nil {
		return Fit{}, fmt.Errorf("solution: the fit: %w", err)
	}
	grams := p.grams
	if ceilings := t.ceilings(p.useful, base); passed(grams, ceilings) {
		r, err := leastsq.UnderCeilings(p.shares, p.right, p.weights, ceilings)
		if err != nil {
			return Fit{}, fmt.Errorf("solution: the fit: %w", err)
		}
		grams = r.X
	}
	f := Fit{GramsPerLitre: make([]float64, len(p.shelf)), Residual: leastsq.Misfit(p.shares, p.right, p.weights, grams)}
	for i, j := range p.at {
		f.GramsPerLitre[j] = grams[i]
	}
	brought, ions := Sum(p.shelf, f.GramsPerLitre)
	f.MgL, f.Ions = base.Plus(brought), ions
	return f, nil
}

// passed tells whether one of the ceilings does not hold.
func passed(grams []float64, ceilings []leastsq.Ceiling) bool {
	for _, c := range ceilings {
		used := 0.0
		for j, v := range c.Of {
			used += v * grams[j]
		}
		if used > c.Most {
			return true
		}
	}
	return false
}

func (t Target) ceilings(shelf []Fertiliser, base Content) []leastsq.Ceiling {
	var out []leastsq.Ceiling
	for _, l := range t.Limits {
		of := make([]float64, len(shelf))
		brings := false
		for j, f := range shelf {
			of[j] = 1000 * f.Share[l.Of]
			brings = brings || of[j] > 0
		}
		if brings {
			out = append(out, leastsq.Ceiling{Of: of, Most: max(0, l.MostMgL-base[l.Of])})
		}
	}
	return out
}
