package trouble

// Place is where a sign is seen.
type Place string

// The places, in the order in which somebody looks.
const (
	Danger Place = "danger"
	Leaves Place = "leaves"
	Stalks Place = "stalks and growth"
	Roots  Place = "roots"
	Water  Place = "water"
	Young  Place = "seedlings"
	Tub    Place = "tub and lamp"
)

// Sign is one thing that anybody can see, hear or smell.
type Sign struct {
	ID    string
	Place Place
	Words string
}

var signs = []Sign{
	{"hot-plug", Danger, "A plug, a cable or the pump is hot, smells or crackles"},
	{"wet-floor", Danger, "There is water on the floor"},
	{"splash", Danger, "Somebody got acid, bleach or plant food in an eye, on the skin or in the mouth"},
	{"unknown-liquid", Danger, "Somebody poured something in, and nobody knows what"},

	{"edges-old", Leaves, "The edges of the outer leaves are brown and dry"},
	{"edges-new", Leaves, "The edges of the newest leaves in the middle are brown"},
	{"pale-all", Leaves, "All leaves are pale"},
	{"pale-old", Leaves, "The lowest leaves are yellow, the new ones green"},
	{"pale-new", Leaves, "The newest leaves are yellow, their veins stay green"},
	{"stripes-old", Leaves, "Old leaves are yellow between green veins"},
	{"purple", Leaves, "Leaves or stalks turn purple"},
	{"bleached", Leaves, "Patches right under the lamp are white or curled"},
	{"bitten", Leaves, "Leaves have holes or bitten edges"},
	{"insects", Leaves, "There are small flies, or dots that move under the leaves"},
	{"powder", Leaves, "There is white powder on the leaves"},

	{"hang", Stalks, "Leaves hang, and the roots are in water"},
	{"hang-dry", Stalks, "Leaves hang, and the roots are dry"},
	{"leggy", Stalks, "Stalks are long and thin and lean to the light"},
	{"bolt", Stalks, "A stalk shoots up in the middle"},
	{"small", Stalks, "The plants hardly grow"},
	{"crowded", Stalks, "Leaves lie over each other"},

	{"roots-slimy", Roots, "Roots are brown, soft and slimy"},
	{"roots-tan", Roots, "Roots are tan and firm"},
	{"roots-short", Roots, "Roots are short and thick, with brown tips"},
	{"smell", Roots, "It smells of rotten eggs or of a drain"},

	{"green", Water, "Water, cups or roots are green"},
	{"cloudy", Water, "The water is cloudy, or white grains lie on the bottom"},
	{"foam", Water, "Foam stays on the water"},
	{"falls-fast", Water, "The line falls much faster than before"},
	{"low", Water, "The line is under the lowest safe line"},
	{"raised", Water, "A still tub was filled up high"},

	{"no-seedlings", Young, "The seeds do not come up"},
	{"fall-over", Young, "Seedlings fall over at the foot"},
	{"after-move", Young, "It began in the days after the move into the tub"},

	{"no-bubbles", Tub, "There are no bubbles"},
	{"lamp-off", Tub, "The lamp is off in its hours, or on at night"},
	{"mould", Tub, "There is fuzz on plugs, cups or lid"},
}

// Signs are all signs, by where they are seen.
func Signs() []Sign { return append([]Sign(nil), signs...) }

// SignOf is the sign of an id.
func SignOf(id string) (Sign, bool) {
	for _, s := range signs {
		if s.ID == id {
			return s, true
		}
	}
	return Sign{}, false
}

// Places are the places in their order.
func Places() []Place { return []Place{Danger, Leaves, Stalks, Roots, Water, Young, Tub} }
