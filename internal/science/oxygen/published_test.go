package oxygen

import (
	"math"
	"testing"
)

// Where the values below come from.
const (
	benson1  = "Benson & Krause as used by the USGS, coefficients read; values worked out with another program"
	yoshida  = "Yoshida et al. 1997 (Kyushu University), read: 0.01 mM cut growth, 0.10 mM did not"
	goto1996 = "Goto et al. 1996, Acta Hort. 440:205, read"
	byHand   = "worked out by hand from the same figures"
)

func near(t *testing.T, what string, got, want, within float64, source string) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v (off by %+.2g; %s)", what, got, want, got-want, source)
	}
}

const mmHg = Atmosphere / 760

// What fresh water holds under 760 mmHg, to the last digit of the table.
func TestPublishedSaturation(t *testing.T) {
	for tempC, want := range map[float64]float64{
		0: 14.621, 5: 12.771, 10: 11.288, 15: 10.084, 18: 9.467, 20: 9.092, 22: 8.744, 24: 8.418,
		25: 8.263, 26: 8.114, 28: 7.828, 30: 7.559, 35: 6.949, 40: 6.413,
	} {
		near(t, "full water", Water{TempC: tempC, PressureKPa: Atmosphere}.Saturation(), want, 5e-4, benson1)
	}
	for _, row := range []struct {
		name   string
		water  Water
		permil float64
		want   float64
	}{
		{"25 °C, 700 mmHg", Water{TempC: 25, PressureKPa: 700 * mmHg}, 0, 7.5904},
		{"20 °C at 1800 m", Water{TempC: 20, PressureKPa: 613.22 * mmHg}, 0, 7.2959},
		{"20 °C, 2 mS/cm", Water{TempC: 20, PressureKPa: Atmosphere, ECmS: 2}, 1.1225, 9.0324},
	} {
		near(t, row.name, row.water.Saturation(), row.want, 5e-5, benson1)
		near(t, row.name+", salt", Salinity(row.water.ECmS), row.permil, 5e-5, benson1)
	}
	near(t, "sea water", freshMgL(20)*saltFactor(20, 35), 7.3961, 5e-5, benson1)
}

// 0.01 mM must alarm, 0.10 mM must not fall under the level to act at.
func TestPublishedLimits(t *testing.T) {
	near(t, "0.01 mM", MgL(0.01), 0.32, 1e-9, yoshida)
	near(t, "0.10 mM", MgL(0.10), 3.20, 1e-9, yoshida)
	_, _, act, critical := Levels()
	if !(MgL(0.01) < act && MgL(0.10) >= act && critical < act) {
		t.Errorf("act below %v, critical %v (%s; %s)", act, critical, yoshida, goto1996)
	}
}

// What bubbles bring.
func TestPublishedAir(t *testing.T) {
	near(t, "oxygen in 1 L/min, g/h", Air{FlowLMin: 1, DepthMM: 1000, Transfer: 1}.StandardMgH()/1000, 16.718, 0.003, byHand)
	coarse := Air{FlowLMin: 1, DepthMM: 250, Transfer: 0.025}
	near(t, "coarse, g/h", coarse.StandardMgH()/1000, 0.1045, 5e-5, byHand)
	near(t, "coarse in 40 L, 1/h", coarse.PerHour(40, 20), 0.287, 5e-4, byHand)
	near(t, "fine in 40 L, 1/h", Air{FlowLMin: 1, DepthMM: 250, Transfer: 0.06}.PerHour(40, 20), 0.689, 5e-4, byHand)
	tub := Tub{Water: Water{TempC: 26, PressureKPa: Atmosphere}, Air: coarse, Litres: 40, UptakeMgH: UptakeMgH(8, 50)}
	near(t, "eight big plants, mg/h", tub.UptakeMgH, 46.08, 1e-9, byHand)
	flow, ok := tub.FlowFor(6)
	if !ok {
		t.Error("no air holds 6 mg/L")
	}
	near(t, "air for 6 mg/L at 26 °C", flow, 1.65, 0.005, byHand)
	near(t, "of the standard rate", tub.UptakeMgH/(flow*coarse.StandardMgH()), 0.268, 5e-4, byHand)
	near(t, "head of 0.30 m, Pa", HeadPa(300), 2937, 0.5, byHand)
	near(t, "5 L/min against it, W", IdealWatts(5, HeadPa(300)), 0.245, 5e-4, byHand)
}

// How long water lasts without the pump, from full.
func TestPublishedPumpFailure(t *testing.T) {
	for _, row := range []struct {
		name                      string
		litres, rootG, nmol, temp float64
		perLitre, to4, to2        float64
		within                    float64
	}{
		{"40 L, 8 plants of 0.5 g root, 22 °C", 40, 4, 30, 22, 0.3456, 13.7, 19.5, 0.05},
		{"20 L, 8 plants of 1 g root, 26 °C", 20, 8, 50, 26, 2.304, 1.79, 2.65, 0.005},
	} {
		tub := Tub{Water: Water{TempC: row.temp, PressureKPa: Atmosphere}, Litres: row.litres, UptakeMgH: UptakeMgH(row.rootG, row.nmol)}
		near(t, row.name+", mg/L an hour", tub.UptakeMgH/row.litres, row.perLitre, 1e-9, byHand)
		full := tub.Saturation()
		near(t, row.name+", to 4", tub.HoursTo(full, 4), row.to4, row.within, byHand)
		near(t, row.name+", to 2", tub.HoursTo(full, 2), row.to2, row.within, byHand)
		near(t, row.name+", by the course", tub.After(full, tub.HoursTo(full, 2)), 2, 1e-9, byHand)
	}
	near(t, "30 nmol, mg for each gram and hour", UptakeMgH(1, 30), 3.456, 1e-9, byHand)
}
