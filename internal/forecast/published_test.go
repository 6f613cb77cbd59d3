package forecast

import (
	"math"
	"testing"

	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/water"
)

// Where the values below come from.
const (
	grown  = "Van Henten 1994 (Agric. Syst. 45:55-72) worked out with scipy's DOP853 at 1e-11"
	drunk  = "growth of Van Henten and transpiration of Graamans (Agric. Syst. 153:138-147) as three states, worked out with scipy's DOP853 at 1e-9"
	salts  = "mass balance of salts, worked out by hand: 1.6 mS/cm in 40 L, 1.2 L a day drunk with salts of 1.2 mS/cm"
	failed = "mass balance of oxygen, Benson & Krause 1980 at the start, worked out by hand"
)

// steadyRoom is condition B of the published growth: 21 °C, 70 %, 400 ppm and
// 16 h of 250 µmol, whose light is 4.57 µmol a joule.
func steadyRoom(t *testing.T, days int) Season {
	s := Season{Tub: box(t)}
	s.Tub.Fan, s.Tub.OpenShare = true, 0
	s.Tub.Stands = []Stand{{Model: crop.Published(), Plants: 1, PerM2: 16, PPFD: 250, UmolPerJoule: 4.57}}
	span := Span{Hours: 16, Lit: true, Room: water.Room{TempC: 21, Humidity: 0.7}, CO2PPM: 400, WaterC: 21}
	night := span
	night.Hours, night.Lit = 8, false
	for range days {
		s.Days = append(s.Days, Day{span, night})
	}
	return s
}

func TestPublishedSeason(t *testing.T) {
	f := run(t, steadyRoom(t, 35), Options{Members: 1})
	for _, c := range []struct {
		day    int
		massG  float64
		source string
	}{
		{10, 55.103, grown}, {20, 203.578, grown}, {28, 308.586, grown}, {35, 389.616, grown},
	} {
		// A season here is followed to a hundred-thousandth a step.
		if got := f.Days[c.day-1].Stands[0].MassG.P50; math.Abs(got/c.massG-1) > 1e-4 {
			t.Errorf("day %d: %.4f g, want %v (%s)", c.day, got, c.massG, c.source)
		}
	}
	// Leaves are taken at their mean over each span, not at every second.
	const within = 2e-3
	for _, c := range []struct {
		day           int
		dayML, litres float64
		source        string
	}{
		{1, 6.750389, 0.006750389, drunk},
		{7, 32.71484, 0.1168651, drunk},
		{14, 170.3668, 0.8033667, drunk},
		{21, 175.9938, 2.035323, drunk},
		{28, 175.9938, 3.267280, drunk},
	} {
		litres, before := f.Days[c.day-1].DrunkL.P50, 0.0
		if c.day > 1 {
			before = f.Days[c.day-2].DrunkL.P50
		}
		if got := 1000 * (litres - before); math.Abs(got/c.dayML-1) > within || math.Abs(litres/c.litres-1) > within {
			t.Errorf("day %d: %.3f mL and %.4f L a plant, want %v and %v (%s)", c.day, got, litres, c.dayML, c.litres, c.source)
		}
	}
}

// The pump stops over 40 L in which eight plants root with half a gram each.
func TestPublishedPumpFailure(t *testing.T) {
	s := Season{Tub: box(t)}
	s.Tub.OpenShare, s.Tub.Air = 0, oxygen.Air{FlowLMin: 1e9, Transfer: 1} // full at the start
	s.Tub.LineMM, s.Tub.Start = 240, water.Solution{Litres: 40}
	m := crop.Published()
	m.Tempo, m.LeafPerG, m.StartG = 0, 0, 0.5/m.RootShare // neither grows nor drinks
	s.Tub.Stands = []Stand{{Model: m, Plants: 8, PerM2: 16, UmolPerJoule: 4.57}}
	s.Days = []Day{{{Hours: 24, Room: water.Room{TempC: 22, Humidity: 0.5}, CO2PPM: 420, WaterC: 22}}}
	for _, c := range []struct{ hours, want float64 }{{13.7, 4}, {19.5, 2}} {
		s.Events = []Event{{AtHour: 24 - c.hours, Kind: PumpOff, Hours: 48}}
		f := run(t, s, Options{Members: 1})
		if got := f.Days[0].OxygenMgL.P50; math.Abs(got-c.want) > 0.02 { // the hours are rounded to a tenth
			t.Errorf("%.3f mg/L after %v h, want %v (%s)", got, c.hours, c.want, failed)
		}
	}
}

// What is poured in is full of oxygen: eight plants with half a gram of roots
// each take 13.824 mg an hour from 30 L that were full at 22 °C, 8.744 mg/L; ten
// hours after the pump has stopped 10 L are added, or all is changed for 40 L.
func TestPublishedPouring(t *testing.T) {
	s := Season{Tub: box(t)}
	s.Tub.OpenShare, s.Tub.Air = 0, oxygen.Air{FlowLMin: 1e9, Transfer: 1}
	s.Tub.LineMM, s.Tub.Start = 240, water.Solution{Litres: 30}
	m := crop.Published()
	m.Tempo, m.LeafPerG, m.StartG = 0, 0, 0.5/m.RootShare
	s.Tub.Stands = []Stand{{Model: m, Plants: 8, PerM2: 16, UmolPerJoule: 4.57}}
	at := func(hours float64) Day {
		return Day{{Hours: hours, Room: water.Room{TempC: 22, Humidity: 0.5}, CO2PPM: 420, WaterC: 22}}
	}
	s.Days = []Day{at(10), at(2)}
	for _, c := range []struct {
		pour Event
		want float64
	}{
		{Event{Kind: TopUp, Litres: 10}, ((8.744-10*13.824/30)*30+8.744*10)/40 - 2*13.824/40},
		{Event{Kind: ChangeOut, LineMM: s.Tub.LevelMM(40)}, 8.744 - 2*13.824/40},
		{Event{Kind: TopUp}, 8.744 - 12*13.824/30},
	} {
		c.pour.AtHour = 10
		s.Events = []Event{{AtHour: 0, Kind: PumpOff, Hours: 48}, c.pour}
		if got := run(t, s, Options{Members: 1}).Days[1].OxygenMgL.P50; math.Abs(got-c.want) > 0.005 {
			t.Errorf("%.4f mg/L, want %.4f (%s)", got, c.want, failed)
		}
	}
}

// Plants that drink 1.2 L a day with salts of 1.2 mS/cm, from 40 L of 1.6, for
// ten days: filled up with plain water every day, and not at all.
func TestPublishedSalts(t *testing.T) {
	s := Season{Tub: box(t)}
	s.Tub.OpenShare, s.Tub.Start = 0, water.Solution{Litres: 40, ECmS: 1.6}
	m := crop.Published()
	m.Tempo, m.StartG = 0, 2 // leaves that stay as they are
	s.Tub.Stands = []Stand{{Model: m, Plants: 10, PerM2: 20, UmolPerJoule: 4.57}}
	for range 10 {
		s.Days = append(s.Days, Day{{Hours: 24, Room: water.Room{TempC: 21, Humidity: 0.5}, CO2PPM: 420, WaterC: 21}})
	}
	salty := Factors{Uptake: math.Log(1.2/water.UptakeEC()) / spreads[Uptake]}
	// One day tells how much a factor of thirst must be for 1.2 L.
	usual := run(t, s, Options{Members: 1}).Days[0].DrunkL.P50
	salty[Thirst] = math.Log(1.2/usual) / spreads[Thirst]
	for _, c := range []struct {
		filled     bool
		litres, ec float64
		source     string
	}{{true, 40, 1.240, salts}, {false, 28, 1.771, salts}} {
		s.Events = nil
		for d := range 10 {
			if c.filled {
				s.Events = append(s.Events, Event{AtHour: float64(24 * (d + 1)), Kind: TopUp, Litres: 1.2})
			}
		}
		got := run(t, s, Options{Members: 1, Known: []Factors{salty}}).Days[9]
		if math.Abs(got.Litres.P50-c.litres) > 1e-6 || math.Abs(got.ECmS.P50-c.ec) > 5e-4 {
			t.Errorf("filled %v: %.3f L of %.4f mS/cm, want %v of %v (%s)", c.filled, got.Litres.P50, got.ECmS.P50, c.litres, c.ec, c.source)
		}
	}
}
