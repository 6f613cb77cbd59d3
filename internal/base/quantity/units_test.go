package quantity

import (
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// namedByUnits pairs what may be typed with the same in the language of
// Debian's units program, and the base unit in that language.
var namedByUnits = []struct {
	kind              Kind
	typed, units, own string
}{
	{Length, "7.3 mm", "7.3 mm", "mm"},
	{Length, "7.3 cm", "7.3 cm", "mm"},
	{Length, "7.3 m", "7.3 m", "mm"},
	{Length, "7.3 in", "7.3 inch", "mm"},
	{Length, "7.3 ft", "7.3 foot", "mm"},
	{Length, "7.3 yd", "7.3 yard", "mm"},
	{Length, "5 ft 2 1/2 in", "5 foot + 2.5 inch", "mm"},
	{Area, "7.3 cm²", "7.3 cm^2", "mm^2"},
	{Area, "7.3 m²", "7.3 m^2", "mm^2"},
	{Area, "7.3 sq in", "7.3 inch^2", "mm^2"},
	{Area, "7.3 ft²", "7.3 foot^2", "mm^2"},
	{Volume, "7.3 L", "7.3 litre", "mm^3"},
	{Volume, "7.3 dL", "7.3 dL", "mm^3"},
	{Volume, "7.3 cL", "7.3 cL", "mm^3"},
	{Volume, "7.3 mL", "7.3 mL", "mm^3"},
	{Volume, "7.3 cc", "7.3 cc", "mm^3"},
	{Volume, "7.3 m³", "7.3 m^3", "mm^3"},
	{Volume, "7.3 cu in", "7.3 inch^3", "mm^3"},
	{Volume, "7.3 cu ft", "7.3 foot^3", "mm^3"},
	{Volume, "7.3 gal", "7.3 usgallon", "mm^3"},
	{Volume, "7.3 qt", "7.3 usquart", "mm^3"},
	{Volume, "7.3 pt", "7.3 uspint", "mm^3"},
	{Volume, "7.3 cups", "7.3 uscup", "mm^3"},
	{Volume, "7.3 fl oz", "7.3 usfluidounce", "mm^3"},
	{Volume, "7.3 tbsp", "7.3 ustablespoon", "mm^3"},
	{Volume, "7.3 tsp", "7.3 usteaspoon", "mm^3"},
	{Volume, "7.3 imp gal", "7.3 brgallon", "mm^3"},
	{Volume, "7.3 imp qt", "7.3 brquart", "mm^3"},
	{Volume, "7.3 imp pt", "7.3 brpint", "mm^3"},
	{Volume, "7.3 imp fl oz", "7.3 brfluidounce", "mm^3"},
	{Mass, "7.3 kg", "7.3 kg", "kg"},
	{Mass, "7.3 g", "7.3 g", "kg"},
	{Mass, "7.3 mg", "7.3 mg", "kg"},
	{Mass, "7.3 µg", "7.3 microgram", "kg"},
	{Mass, "7.3 lb", "7.3 pound", "kg"},
	{Mass, "7.3 oz", "7.3 ounce", "kg"},
	{Time, "7.3 min", "7.3 minute", "s"},
	{Time, "7.3 h", "7.3 hour", "s"},
	{Time, "7.3 d", "7.3 day", "s"},
	{Time, "7.3 weeks", "7.3 week", "s"},
	{Temperature, "70 °F", "tempF(70)", "K"},
	{Temperature, "-13.5 °F", "tempF(-13.5)", "K"},
	{Temperature, "21.3 °C", "tempC(21.3)", "K"},
	{Density, "7.3 kg/L", "7.3 kg/litre", "kg/mm^3"},
	{Density, "7.3 lb/gal", "7.3 pound/usgallon", "kg/mm^3"},
	{Density, "7.3 g/mL", "7.3 g/mL", "kg/mm^3"},
	{Content, "7.3 mg/L", "7.3 mg/litre", "kg/mm^3"},
	{AirFlow, "7.3 L/min", "7.3 litre/minute", "mm^3/s"},
	{AirFlow, "7.3 L/h", "7.3 litre/hour", "mm^3/s"},
	{AirFlow, "7.3 gpm", "7.3 usgallon/minute", "mm^3/s"},
	{AirFlow, "7.3 gph", "7.3 usgallon/hour", "mm^3/s"},
	{DailyVolume, "7.3 L/d", "7.3 litre/day", "mm^3/s"},
	{DailyVolume, "7.3 gal/d", "7.3 usgallon/day", "mm^3/s"},
	{Power, "7.3 W", "7.3 W", "kg mm^2/s^3"},
	{Power, "7.3 kW", "7.3 kW", "kg mm^2/s^3"},
	{PhotonFlux, "7.3 µmol/s", "7.3 micromol/s", "mol/s"},
	{PPFD, "7.3 µmol/m²/s", "7.3 micromol/m^2/s", "mol/s/mm^2"},
	{Illuminance, "7.3 lx", "7.3 lux", "lumen/mm^2"},
	{Illuminance, "7.3 klx", "7.3 kilolux", "lumen/mm^2"},
	{Illuminance, "7.3 fc", "7.3 footcandle", "lumen/mm^2"},
	{Conductivity, "7.3 mS/cm", "7.3 millisiemens/cm", "A^2 s^3/kg/mm^3"},
	{Conductivity, "7.3 µS/cm", "7.3 microsiemens/cm", "A^2 s^3/kg/mm^3"},
	{Conductivity, "7.3 dS/m", "7.3 decisiemens/m", "A^2 s^3/kg/mm^3"},
	{Share, "7.3 %", "7.3 percent", "1"},
	{MoleFraction, "7.3 ppm", "7.3 ppm", "1"},
}

// unitsDigits is what units prints and so what can be compared: it works in
// float64 itself and converts in its own order.
const unitsDigits = 1e-13

func TestAgreesWithUnitsProgram(t *testing.T) {
	program, err := exec.LookPath("units")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("units is not installed: make tools")
		}
		t.Skip("units is not installed: make tools")
	}
	for _, tt := range namedByUnits {
		out, err := exec.Command(program, "-t", "-o", "%.17g", tt.units, tt.own).Output()
		if err != nil {
			t.Errorf("units %s: %v %s", tt.units, err, out)
			continue
		}
		want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		if err != nil {
			t.Errorf("units %s: %v", tt.units, err)
			continue
		}
		got, err := Parse(tt.kind, tt.typed)
		if err != nil || math.Abs(got-want) > unitsDigits*math.Abs(want) {
			t.Errorf("%s = %v %s (%v), units says %v", tt.typed, got, tt.own, err, want)
		}
		t.Logf("%s = %.10g %s", tt.typed, got, tt.own)
	}
}

// Every unit that can be typed alone is among those compared, so that a new one
// cannot be forgotten.
func TestEveryUnitIsCompared(t *testing.T) {
	compared := map[Unit]bool{
		Second: true, // the base unit itself
		{Symbol: "K", Dim: TemperatureDim, Scale: 1}: true,
		{Symbol: "‰", Scale: 1e-3}:                   true,
	}
	add := func(text string, k Kind) {
		for _, word := range []string{"/", " a "} {
			top, bottom, two := strings.Cut(text, word)
			if two {
				u, _ := findUnit(strings.TrimSpace(top), k)
				compared[u] = true
				u, _ = findUnit(strings.TrimSpace(bottom), k)
				compared[u] = true
			}
		}
		u, _ := findUnit(text, k)
		compared[u] = true
	}
	for _, tt := range namedByUnits {
		cleaned, _ := clean(tt.typed)
		_, name, _ := strings.Cut(cleaned, " ")
		add(name, tt.kind)
	}
	for _, row := range simpleUnits {
		if !compared[row.unit] && row.unit.Dim != (Dim{Amount: 1}) && row.unit.Symbol != "S" && row.unit.Symbol != "mm²" {
			t.Errorf("%s is not compared with units", row.unit.Symbol)
		}
	}
}
