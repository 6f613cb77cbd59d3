package lesson

// Band is an age band, by the school years of the United States.
type Band string

// The bands.
const (
	Early  Band = "K-2"
	Junior Band = "3-5"
	Middle Band = "6-8"
	Senior Band = "9-12"
)

// Bands are the bands, the youngest first.
func Bands() []Band { return []Band{Early, Junior, Middle, Senior} }

// Ages is the band in years of age.
func (b Band) Ages() string {
	switch b {
	case Early:
		return "ages 5 to 8"
	case Junior:
		return "ages 8 to 11"
	case Middle:
		return "ages 11 to 14"
	}
	return "ages 14 to 18"
}

// ParseBand reads a band as it is written in an address.
func ParseBand(text string) (Band, bool) {
	for _, b := range Bands() {
		if string(b) == text {
			return b, true
		}
	}
	return "", false
}
