package store

import (
	"database/sql"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

const figureColumns = "h.id, h.tub, h.at_ms, h.ph_low, h.ph_high, h.ec_low, h.ec_high, h.ec_raw, h.water_c, h.litres, h.depth_mm, h.filled_l, h.added_l, h.height_mm, h.doubtful"

// figuresOf are the columns beside a row's cells, from ph_low on.
func figuresOf(r reading.Row) []any {
	doubtful := make([]string, len(r.Doubtful))
	for i, f := range r.Doubtful {
		doubtful[i] = string(f)
	}
	return []any{
		ifSet(r.PH.Read.Set(), r.PH.Read.Low), ifSet(r.PH.Read.Set(), r.PH.Read.High),
		ifSet(r.EC.Read.Set(), r.EC.Read.Low), ifSet(r.EC.Read.Set(), r.EC.Read.High), r.EC.Raw,
		ifSet(r.Water.Set(), r.Water.Value),
		ifSet(r.Level.Litres.Set(), r.Level.Litres.Value), ifSet(r.Level.Depth.Set(), r.Level.Depth.Value), ifSet(r.Level.Filled.Set(), r.Level.Filled.Value),
		ifSet(r.Added.Litres.Set(), r.Added.Litres.Value), ifSet(r.Height.Set(), r.Height.Value),
		strings.Join(doubtful, ";"),
	}
}

func ifSet[Q ~float64](set bool, v Q) sql.NullFloat64 {
	return sql.NullFloat64{Float64: float64(v), Valid: set}
}

// scanFigures reads a row's figures alone: no words, no team, no instrument.
func scanFigures(row scanner) (r reading.Row, err error) {
	var at int64
	var doubtful string
	var phLow, phHigh, ecLow, ecHigh, water, litres, depth, filled, added, height sql.NullFloat64
	err = row.Scan(&r.ID, &r.Tub, &at, &phLow, &phHigh, &ecLow, &ecHigh, &r.EC.Raw, &water, &litres, &depth, &filled, &added, &height, &doubtful)
	if err != nil {
		return reading.Row{}, err
	}
	r.At = moment(at)
	r.PH.Read = interval[quantity.PH](phLow, phHigh)
	r.EC.Read = interval[quantity.MSPerCM](ecLow, ecHigh)
	r.Water = typed[quantity.DegC](water)
	r.Level = reading.Level{Litres: typed[quantity.L](litres), Depth: typed[quantity.MM](depth), Filled: typed[quantity.L](filled)}
	r.Added.Litres, r.Height = typed[quantity.L](added), typed[quantity.MM](height)
	for f := range strings.SplitSeq(doubtful, ";") {
		if f != "" {
			r.Doubtful = append(r.Doubtful, reading.Field(f))
		}
	}
	return r, nil
}

func typed[Q quantity.Quantity](v sql.NullFloat64) quantity.Typed[Q] {
	if !v.Valid {
		return quantity.Typed[Q]{}
	}
	return quantity.Typed[Q]{Value: Q(v.Float64), Text: written(v.Float64)}
}

func interval[Q quantity.Quantity](low, high sql.NullFloat64) quantity.Interval[Q] {
	if !low.Valid || !high.Valid {
		return quantity.Interval[Q]{}
	}
	text := written(low.Float64)
	if low != high {
		text += " to " + written(high.Float64)
	}
	return quantity.Interval[Q]{Low: Q(low.Float64), High: Q(high.Float64), Text: text}
}

func written(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
