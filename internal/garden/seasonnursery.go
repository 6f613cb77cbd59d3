package garden

import (
	"fmt"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/school/season"
	"rootbell/internal/science/crop"
)

// nursery says where seedlings would not come up well, or find no room.
func (s *tubSeason) nursery(a season.Answer) {
	at := s.t.typed.Nursery
	field := "place.air_temperature"
	if at.Temperature.Set() {
		field = s.field + ".nursery.temperature"
	} else if !s.plan.Place.AirTemperature.Set() {
		field = s.field
	}
	cells := 0
	for _, c := range a.Crops {
		cells += c.Cells
		bed := s.bed.Crops[c.Crop]
		for _, f := range bed.Kind.CheckNursery(field, bed.Seed.TempC) {
			f.Text = s.t.name + ": " + f.Text
			s.findings = append(s.findings, f)
		}
	}
	if have := at.Cells; have.Given && have.Value < cells {
		s.find(finding.Warn, "nursery-cells", s.field+".nursery.cells", fmt.Sprintf("%s: %d cells are to be sown, and the nursery has %d.", s.t.name, cells, have.Value),
			"Find more cells, or plant fewer.")
	}
	if want := crop.NurseryPPFD(); at.PPFD.Set() && float64(at.PPFD.Value) < want {
		s.find(finding.Note, "nursery-dark", s.field+".nursery.ppfd", fmt.Sprintf("%s: seedlings want %.0f µmol/m²/s; under %s they grow long and thin, and the forecast does not know it.", s.t.name, want,
			quantity.Format(quantity.PPFD, at.PPFD.Value.Base(), s.plan.Units)), "Bring the tray nearer to the lamp.")
	}
}
