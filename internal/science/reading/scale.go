package reading

import (
	"slices"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Scale is what the figure on an EC meter stands for.
type Scale string

// The scales. A ppm scale is so many ppm for 1 mS/cm; none of them is
// milligrams of nutrient in a litre. The empty scale is mS/cm.
const (
	MilliSiemens Scale = "mS/cm"
	MicroSiemens Scale = "µS/cm"
	PPM500       Scale = "ppm 500"
	PPM640       Scale = "ppm 640"
	PPM700       Scale = "ppm 700"
)

var scales = [...]Scale{MilliSiemens, MicroSiemens, PPM500, PPM640, PPM700}

// Scales are the scales to choose from.
func Scales() []Scale { return slices.Clone(scales[:]) }

// PerMS is the figure that the scale shows for 1 mS/cm.
func (s Scale) PerMS() float64 {
	switch s {
	case MicroSiemens:
		return 1000
	case PPM500:
		return 500
	case PPM640:
		return 640
	case PPM700:
		return 700
	}
	return 1
}

// PPM tells whether it is one of the ppm scales.
func (s Scale) PPM() bool { return strings.HasPrefix(string(s), "ppm") }

// ParseScale reads a scale as it is written in a table: mS/cm, µS/cm, ppm 500.
func ParseScale(text string) (Scale, bool) {
	wanted := strings.ToLower(strings.ReplaceAll(strings.ReplaceAll(text, "μ", "µ"), " ", ""))
	if wanted == "us/cm" {
		return MicroSiemens, true
	}
	for _, s := range scales {
		if strings.ToLower(strings.ReplaceAll(string(s), " ", "")) == wanted {
			return s, true
		}
	}
	return "", false
}

// ParseEC reads the figure on a meter: a number in the meter's scale, or one
// with its own unit, or an interval of either. The error is a *quantity.Error.
func ParseEC(text string, scale Scale) (quantity.Interval[quantity.MSPerCM], error) {
	low := strings.ToLower(text)
	ppm := strings.Contains(low, "ppm")
	if ppm && !scale.PPM() {
		return quantity.Interval[quantity.MSPerCM]{}, &quantity.Error{
			What: "ppm does not say which scale the meter has",
			Hint: "choose ppm 500, 640 or 700: it stands in the meter's leaflet",
		}
	}
	if !scale.PPM() || strings.Contains(low, "s/") {
		return ParseInterval[quantity.MSPerCM](text, string(orMS(scale)))
	}
	bare := strings.TrimSpace(strings.ReplaceAll(strings.ReplaceAll(low, "ppm", ""), "  ", " "))
	read, err := quantity.ParseIntervalAs[quantity.Number](bare)
	if err != nil {
		return quantity.Interval[quantity.MSPerCM]{}, err
	}
	if read.Low < 0 {
		return quantity.Interval[quantity.MSPerCM]{}, &quantity.Error{What: "a conductivity cannot be negative", Hint: "leave out the minus sign"}
	}
	per := scale.PerMS()
	return quantity.Interval[quantity.MSPerCM]{
		Low: quantity.MSPerCM(float64(read.Low) / per), High: quantity.MSPerCM(float64(read.High) / per), Text: text,
	}, nil
}

func orMS(s Scale) Scale {
	if s == "" {
		return MilliSiemens
	}
	return s
}

var scaleLaw = working.Must(working.Law{
	Symbol: "E", Kind: quantity.Conductivity, Unit: quantity.MillisiemensPerCM, Formula: "r/k", Empirical: true,
	Where: []working.Symbol{
		{Name: "r", Meaning: "figure on the meter", Kind: quantity.Factor},
		{Name: "k", Meaning: "figure that the meter's scale shows for 1 mS/cm", Kind: quantity.Factor},
	},
	Basis: working.OfTrade, Source: "the meter's scale; a ppm scale is a figure per mS/cm that each maker chose, and no weight of nutrient",
})

// Shown enters the EC of a reading in mS/cm with the figure on the meter.
func (e EC) Shown(b *working.Book, key string) working.Number {
	per := orMS(e.Scale).PerMS()
	figure := b.Typed(key+"_figure", "figure on the meter", "r", quantity.Factor, float64(e.Read.Mid())*per, 0)
	return b.Work(scaleLaw, key, "EC as read", figure, b.Typed(key+"_scale", "the meter's scale", "k", quantity.Factor, per, 0))
}
