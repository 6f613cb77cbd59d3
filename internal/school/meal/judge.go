package meal

// Known is what the plan and the logbook tell before anybody is asked.
type Known struct {
	SecondHand  bool // the tub's past is not known
	BadRoots    bool // the logbook's last words on the roots are brown or a smell
	CleanedLate bool // it was cleaned and no rinsing is written down
	KitchenYes  bool // the plan says that the kitchen agreed
	KitchenNo   bool
}

// Judged is a gate with its reply.
type Judged struct {
	Gate
	Reply Reply
	Open  bool
	Does  string // what is done; empty where it is open
	Told  string // why the reply is taken from the plan or the logbook
}

// Answer is how things stand.
type Answer struct {
	Gates  []Judged
	Left   []Judged // what is not open, those that end it first
	Never  bool     // nothing from this tub is eaten
	Asked  bool     // every gate is open: then the people named decide
	Says   string
	Counts string // what a harvest that is not eaten still counts for
}

// Counts is what a harvest that nobody eats is for.
const Counts = "A harvest that is not eaten still counts: weigh it, write it down, compare it with the forecast."

// Untouched is what counts where nobody knows what was poured in.
const Untouched = "What grew there still counts: write down what happened. Until it is known what was poured in, nobody touches it."

// Judge holds the replies against the gates. Replies by the gate's id.
func Judge(replies map[string]Reply, k Known) Answer {
	var out Answer
	var refused, rest []Judged
	closed := false
	for _, g := range gates {
		j := Judged{Gate: g, Reply: replies[g.ID]}
		j.fromPlan(k)
		switch j.Reply {
		case g.Good:
			j.Open = true
		case Unknown:
			j.Does = g.Ask
		default:
			j.Does = g.Closed
			out.Never, closed = out.Never || g.Final, true
		}
		out.Gates = append(out.Gates, j)
		switch {
		case j.Open:
		case !j.Final || j.Reply == Unknown:
			rest = append(rest, j)
		case j.ID == permission:
			refused = append(refused, j) // what is wrong with the tub comes first
		default:
			out.Left = append(out.Left, j)
		}
	}
	out.Counts = Counts
	if replies[poured] == Yes {
		out.Counts = Untouched // and nothing is asked for that somebody would touch it for
	} else {
		out.Left = append(append(out.Left, refused...), rest...)
	}
	out.Asked = len(out.Left) == 0
	switch {
	case out.Never:
		out.Says = out.Left[0].Does
	case out.Asked:
		out.Says = "Nothing that is asked here stands against it. The people named below decide."
	case closed:
		out.Says = "Not like this: first what is named below."
	case len(out.Left) == 1:
		out.Says = "One question is open."
	default:
		out.Says = "Not yet: some questions are open."
	}
	return out
}

// fromPlan takes what is known already. It never opens a gate that somebody
// closed.
func (j *Judged) fromPlan(k Known) {
	take := func(id string, holds bool, reply Reply, told string) {
		if j.ID == id && holds && j.Reply != reply && (j.Reply == Unknown || reply != j.Good) {
			j.Reply, j.Told = reply, told
		}
	}
	take("past", k.SecondHand, No, "The plan says that its past is not known.")
	take("sound", k.BadRoots, No, "The logbook says brown roots or a bad smell.")
	take(permission, k.KitchenYes, Yes, "The plan says that the kitchen agreed.")
	take(permission, k.KitchenNo, No, "The plan says that the kitchen did not agree.")
}
