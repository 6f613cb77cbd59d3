package crop

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// EC enters the strength of solution that the crop is grown in, from the weakest
// to the strongest.
func (c Crop) EC(b *working.Book) (low, high working.Number) {
	enter := func(what, key, name, symbol string) working.Number {
		f := c.fact(what)
		return b.Fact(c.key(key), c.Name+", "+name, symbol, quantity.Conductivity, quantity.MSPerCM(f.Value).Base(), f)
	}
	return enter("ec.low", "ec_low", "weakest solution", "l"), enter("ec.high", "ec_high", "strongest solution", "h")
}

// PH enters the lowest and the highest pH that the crop is grown at.
func (c Crop) PH(b *working.Book) (low, high working.Number) {
	enter := func(what, key, name, symbol string) working.Number {
		f := c.fact(what)
		return b.Fact(c.key(key), c.Name+", "+name, symbol, quantity.PHScale, quantity.PH(f.Value).Base(), f)
	}
	return enter("ph.low", "ph_low", "lowest pH", "l"), enter("ph.high", "ph_high", "highest pH", "h")
}
