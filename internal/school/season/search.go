package season

import "context"

func back(ctx context.Context, w Wish, e Effort) (Answer, error) {
	out := Answer{Wanted: w.Chance, ReadyBy: w.MealOn, MoveOn: w.MoveOn}
	if out.Wanted <= 0 {
		out.Wanted = UsualChance()
	}
	c := Course{Bed: w.Bed, MoveOn: w.MoveOn, To: w.MealOn}
	if w.Course != nil && w.MoveOn.Set() {
		c = w.Course(w.MoveOn, w.MealOn)
	}
	if !c.MoveOn.Set() {
		c.MoveOn, _ = settleFrom(w.Calendar, w.Today.Add(int(w.Crops[0].Kind.NurseryDays())))
	}
	f, err := follow(ctx, c, e)
	if err != nil {
		return out, err
	}
	out.MoveOn, out.Followed, out.Chance = c.MoveOn, f, ready(w, f)
	out.Can = out.Chance >= out.Wanted
	return out, nil
}

// ready is the chance that the wish is met at the end of a course.
func ready(w Wish, f Followed) float64 {
	n := 0
	for _, end := range f.Ends {
		all, each := 0.0, true
		for j := range w.Tub.Stands {
			s := &w.Tub.Stands[j]
			g := s.Model.HarvestG(end.Stands[j], s.PerM2)
			all += g * float64(end.Plants[j])
			each = each && (end.Plants[j] == 0 || g >= s.PickG)
		}
		if all >= w.NeededG && each {
			n++
		}
	}
	return float64(n) / float64(max(1, len(f.Ends)))
}
