package trouble

// Risk is how much a first step can spoil where the cause is another one.
type Risk int

// The risks, the safest first.
const (
	LookOnly   Risk = iota // look, measure, write down
	WaterOnly              // stir, shade, top up with plain water, move a lamp
	ChangeOver             // change the water, take plants out
)

// Cause is something that may be wrong.
type Cause struct {
	ID      string
	Name    string // what is wrong, as a sentence
	Why     string // how that comes about
	First   string // the first step
	Risk    Risk   // of that step
	Measure []string
	Throw   string // when what is thrown away; empty: never
	Call    string // whom
	Source  string // of the cause, with its status

	seen    map[string]int // points for each sign
	told    []clue         // readings and history that speak for it
	against []clue         // that speak against it
}

const (
	practice = "common practice, no source"
	memory   = "from memory, no source opened"
	teacher  = "the teacher who runs the garden"
	salts    = "an adult mixes; nothing is added on a guess"
)

// causes are all causes, the dangerous ones of a tub first. Points: 3 a sign
// that hardly anything else makes, 2 a usual one, 1 one of many.
var causes = []Cause{
	{
		ID: "air", Name: "The air has stopped.", Why: "Roots breathe what the bubbles bring. Without them the oxygen in the water is used up within hours.",
		First: "Floor, plug and hands dry: an adult looks at plug, socket, tube and valve. Until it runs, stir the water with a clean jug every half hour.", Risk: WaterOnly,
		Measure: []string{"since when there are no bubbles"}, Call: "the caretaker, where a plug or socket is the cause", Source: practice,
		seen: map[string]int{"no-bubbles": 3, "hang": 1, "smell": 1}, told: []clue{airless, wasAway}, against: []clue{stillTub},
	},
	{
		ID: "dry", Name: "The roots ran dry.", Why: "More was drunk than stood over the lowest line, often over a weekend or a break.",
		First: "Fill up to the line with plain water that has stood for a day. Write down how much.", Risk: WaterOnly,
		Measure: []string{"the level, each day of this week"}, Source: "unplanned closures of schools: Wong et al. 2014, PLoS ONE 9(12):e113755; the step: common practice",
		seen: map[string]int{"hang-dry": 3, "low": 2}, told: []clue{lowLine, wasAway},
	},
	{
		ID: "leak", Name: "The tub leaks, or somebody took water out.", Why: "More is gone than plants can drink.",
		First: "Keep everyone off wet floor. Look under and around the tub before anything is filled up.", Risk: LookOnly,
		Measure: []string{"the level, twice with an hour between"}, Call: "the caretaker, where the floor or a socket got wet", Source: practice,
		seen: map[string]int{"falls-fast": 3, "low": 1}, told: []clue{losing, lowLine},
	},
	{
		ID: "rot", Name: "The roots rot.", Why: "Water moulds live in warm water with little air. They spread in the water from plant to plant.",
		First: "Close the lid, wash hands, eat nothing from this tub. Do not carry water or tools to another tub.", Risk: LookOnly,
		Measure: []string{"the water's temperature", "whether each stone bubbles"},
		Throw:   "Plants whose roots are soft and brown go, bagged, with the solution. The tub is cleaned before anything is planted again.", Call: teacher,
		Source: "Pythium in spinach: Bates & Stanghellini 1984, Plant Disease 68:989; the steps: common practice",
		seen:   map[string]int{"roots-slimy": 3, "smell": 2, "hang": 1, "small": 1}, told: []clue{warm, airless, rotten, oldWater},
	},
	{
		ID: "warm", Name: "The water is too warm, so it holds too little oxygen.", Why: "Warm water holds less oxygen, and roots use more.",
		First: "Shade the tub from sun and lamp heat. See that every stone bubbles.", Risk: WaterOnly,
		Measure: []string{"the water's temperature in the afternoon"}, Source: "oxygen by temperature: Benson & Krause 1984, Limnol. Oceanogr. 29:620; the limit: common practice",
		seen: map[string]int{"hang": 2, "small": 1, "bolt": 1, "roots-tan": 1}, told: []clue{warm, airless}, against: []clue{cold},
	},
	{
		ID: "strong", Name: "The solution is too strong.", Why: "Roots cannot draw water from it, and the leaf edges dry. It grows stronger as plants drink.",
		First: "Stir, rinse the probe and read the EC again. If it is still high, thin it as the page of today says.", Risk: LookOnly,
		Measure: []string{"the EC", "the level"}, Call: salts, Source: practice,
		seen: map[string]int{"edges-old": 2, "hang": 1, "small": 1, "roots-short": 1}, told: []clue{strong, justFed, gathered}, against: []clue{weak},
	},
	{
		ID: "weak", Name: "The plants are hungry: the solution is too weak.", Why: "They took the food out of the water faster than it was topped up.",
		First: "Stir, rinse the probe and read the EC again. If it is still low, an adult mixes as the page of today says.", Risk: LookOnly,
		Measure: []string{"the EC"}, Call: salts, Source: practice,
		seen: map[string]int{"pale-all": 2, "pale-old": 2, "small": 1}, told: []clue{weak, oldWater, noN}, against: []clue{strong},
	},
	{
		ID: "iron", Name: "The newest leaves lack iron, mostly because the pH is high.", Why: "Over pH 6.5 to 7 iron turns into rust that roots cannot take.",
		First: "Read the pH twice, on two days. Nothing is poured in before.", Risk: LookOnly,
		Measure: []string{"the pH", "the alkalinity of the tap"}, Call: "an adult, for a correction of the pH", Source: memory,
		seen: map[string]int{"pale-new": 3}, told: []clue{alkaline, noIron}, against: []clue{sour},
	},
	{
		ID: "magnesium", Name: "Old leaves lack magnesium.", Why: "The plant moves it from old leaves to new ones.",
		First: "Look at the bars of nutrients on the page Mix. Nothing is added on a guess.", Risk: LookOnly,
		Measure: []string{"the EC", "the pH"}, Call: salts, Source: memory,
		seen: map[string]int{"stripes-old": 3, "pale-old": 1}, told: []clue{noMg, weak},
	},
	{
		ID: "phosphorus", Name: "The roots are cold, or lack phosphorus.", Why: "Cold roots take little phosphorus. Some kinds are red or purple by nature.",
		First: "Measure the water's temperature in the morning. Ask what colour the seed packet shows.", Risk: LookOnly,
		Measure: []string{"the water's temperature in the morning"}, Source: memory,
		seen: map[string]int{"purple": 3, "small": 1}, told: []clue{cold, noP}, against: []clue{warm},
	},
	{
		ID: "sour", Name: "The pH is too low.", Why: "Plants that take ammonium turn the water sour, and acid may have been given twice.",
		First: "Read the pH again in an hour. Nobody adds anything before.", Risk: LookOnly,
		Measure: []string{"the pH"}, Call: "an adult, for a correction of the pH", Source: practice,
		seen: map[string]int{"roots-short": 2, "edges-old": 1, "small": 1}, told: []clue{sour, justFed}, against: []clue{alkaline},
	},
	{
		ID: "tip-burn", Name: "Tip burn: the middle grows faster than calcium gets there.", Why: "Closed leaves breathe out little water, and calcium comes only with the water. Much light and damp, still air make it worse.",
		First: "Let a small fan blow down on the plants, away from water and plugs, or shorten the lamp's day by two hours.", Risk: WaterOnly,
		Measure: []string{"the light of a day at the leaves", "the air's humidity"}, Source: "Sago 2016, HortScience 51:1087; with a fan none: Frantz et al. 2004, J. Am. Soc. Hort. Sci. 129:331",
		seen: map[string]int{"edges-new": 3}, told: []clue{bright, damp}, against: []clue{dim},
	},
	{
		ID: "chlorine", Name: "Chlorine from the tap harms the roots.", Why: "Tap water that did not stand, or chloramine, which does not go by standing.",
		First: "Use only water that stood for a day, or that was treated, and test it with a strip.", Risk: WaterOnly,
		Measure: []string{"chlorine in the jug, with a strip"}, Source: "0.5 mg/L cost 30 % of the shoot: McGehee & Raudales 2023, HortTechnology 33(1):125",
		seen: map[string]int{"roots-short": 2, "small": 1, "roots-tan": 1}, told: []clue{chlorine, justFed},
	},
	{
		ID: "algae", Name: "Algae grow where light reaches the water.", Why: "Light and plant food are all they need. They take oxygen at night.",
		First: "Cover every hole and gap that light gets through. Nothing is poured in against them.", Risk: WaterOnly,
		Measure: []string{"where light gets in: look from inside with the lamp on"}, Throw: "At the next change of water the tub is wiped clean.", Source: practice,
		seen: map[string]int{"green": 3, "smell": 1}, told: []clue{oldWater},
	},
	{
		ID: "dim", Name: "There is too little light.", Why: "The lamp hangs too high, is lit too short, or plants stand beside it.",
		First: "Lower the lamp to the height that the plan says, or light it longer, up to 18 hours.", Risk: WaterOnly,
		Measure: []string{"from the lamp to the leaves", "the lamp's hours"}, Source: practice,
		seen: map[string]int{"leggy": 3, "small": 1, "pale-all": 1}, told: []clue{dim}, against: []clue{bright},
	},
	{
		ID: "bright", Name: "The lamp is too near or too bright.", Why: "Leaves right under it get hot and lose their green.",
		First: "An adult hangs the lamp higher, by a hand's width. Nobody looks into it.", Risk: WaterOnly,
		Measure: []string{"from the lamp to the leaves"}, Source: practice,
		seen: map[string]int{"bleached": 3, "edges-new": 1}, told: []clue{bright}, against: []clue{dim},
	},
	{
		ID: "lamp-clock", Name: "The lamp's timer is off or wrong.", Why: "After a power cut or a change of the clocks it keeps another time.",
		First: "Floor, plug and hands dry: an adult looks at plug and timer, and sets the clock.", Risk: WaterOnly,
		Measure: []string{"when the lamp goes on and off"}, Call: "the caretaker, where the socket is dead", Source: practice,
		seen: map[string]int{"lamp-off": 3, "leggy": 1, "bolt": 1}, told: []clue{wasAway},
	},
	{
		ID: "bolting", Name: "The plants bolt: they go to seed.", Why: "Heat, long days and age make lettuce and rocket shoot up. The leaves turn bitter.",
		First: "Harvest now what is good. Sow again.", Risk: LookOnly, Source: "lettuce bolts over 25 °C: Horticulturae 2020 6(1):7; the step: common practice",
		Measure: []string{"the room's temperature in the afternoon"},
		seen:    map[string]int{"bolt": 3}, told: []clue{overdue, warm},
	},
	{
		ID: "crowded", Name: "The plants stand too close.", Why: "Leaves that lie in shade cost more than they make.",
		First: "Harvest every second plant, and cap the holes.", Risk: ChangeOver, Source: practice,
		Measure: []string{"the width of a plant against the distance of the holes"},
		seen:    map[string]int{"crowded": 3, "leggy": 1}, told: []clue{overdue},
	},
	{
		ID: "pests", Name: "Small animals eat the plants.", Why: "They came with bought plants, soil or through the window.",
		First: "Pick them off, rinse the leaves with plain water, hang a yellow sticky card. Nothing is sprayed.", Risk: WaterOnly,
		Measure: []string{"how many are on the card each week"}, Throw: "A plant full of them goes, in a closed bag.", Source: practice,
		seen: map[string]int{"insects": 3, "bitten": 2},
	},
	{
		ID: "mildew", Name: "Mildew or mould.", Why: "Damp, still air and wet things let it grow within two days.",
		First: "Wipe it off with a damp cloth, dry what is wet, open a window. Who has asthma stays away.", Risk: WaterOnly,
		Measure: []string{"the air's humidity"}, Throw: "A leaf with powder goes, in a closed bag. A plant full of it too.",
		Source: "wet things dry within 24 to 48 hours: US EPA 402-K-01-001; the steps: common practice",
		seen:   map[string]int{"powder": 3, "mould": 3}, told: []clue{damp},
	},
	{
		ID: "grains", Name: "Something fell out of the solution.", Why: "Stocks A and B met undiluted, or the pH was too high: calcium falls out with sulfate or phosphate.",
		First: "Nothing more is added. Read EC and pH.", Risk: LookOnly,
		Measure: []string{"the EC", "the pH"}, Throw: "Stocks with white grains are not used any more.", Call: salts, Source: "solubility of gypsum and brushite; the steps: common practice",
		seen: map[string]int{"cloudy": 3}, told: []clue{alkaline, justFed},
	},
	{
		ID: "old-water", Name: "The water is old.", Why: "What roots shed rots, and what plants leave builds up.",
		First: "Change the water on the next day with time for it.", Risk: ChangeOver,
		Measure: []string{"the day of the last change"}, Source: practice,
		seen: map[string]int{"foam": 3, "smell": 1, "cloudy": 1, "roots-tan": 2}, told: []clue{oldWater, gathered},
	},
	{
		ID: "move", Name: "The plants have just moved.", Why: "Roots that were touched or dried need some days. This passes.",
		First: "Leave them alone for three days. Keep the lid closed.", Risk: LookOnly,
		Measure: []string{"whether new leaves come within a week"}, Source: practice,
		seen: map[string]int{"after-move": 3, "hang": 1, "small": 1}, told: []clue{justMoved},
	},
	{
		ID: "drowned", Name: "The roots of a still tub were drowned.", Why: "Roots that hang in air cannot be put under water again.",
		First: "Let the line fall. Nothing more is filled in.", Risk: LookOnly,
		Measure: []string{"the level, and what it was before"}, Source: "a rise of more than 20 mm may harm: Kratky 2004, Acta Hort. 648:83, abstract",
		seen: map[string]int{"raised": 3, "hang": 1}, told: []clue{justFed, stillTub},
	},
	{
		ID: "cold", Name: "It is too cold to grow.", Why: "Under 15 °C (59 °F) leafy plants stand still, and basil suffers.",
		First: "Write down air and water in the morning. Move the tub's place only when it is empty.", Risk: LookOnly,
		Measure: []string{"air and water in the morning"}, Source: practice,
		seen: map[string]int{"small": 2, "purple": 1}, told: []clue{cold}, against: []clue{warm},
	},
	{
		ID: "seeds", Name: "The seeds are old, too warm or too dry.", Why: "Lettuce sleeps when it is hot: at 30 °C (86 °F) few come up. Old seed is weak.",
		First: "Keep the plugs damp and at room temperature for a week. Then sow again, two to a cell.", Risk: LookOnly,
		Measure: []string{"the temperature where the cells stand", "the year on the packet"}, Source: "lettuce at 30 °C 12 %, at 20 °C 99 %: Harrington & Minges, Univ. of California",
		seen: map[string]int{"no-seedlings": 3},
	},
	{
		ID: "damping-off", Name: "Seedlings rot at the foot.", Why: "Plugs too wet and air too still.",
		First: "Take the fallen ones out. Open the cover, and water less.", Risk: WaterOnly,
		Measure: []string{"how wet the plugs are"}, Throw: "The fallen seedlings and their plugs.", Source: practice,
		seen: map[string]int{"fall-over": 3}, told: []clue{damp, warm},
	},
	{
		ID: "number", Name: "The number is wrong, not the plant.", Why: "A meter that was not checked, a slip of the pen, another unit.",
		First: "Check the meter against its standard, rinse, read again.", Risk: LookOnly,
		Measure: []string{"the standard, then the tub"}, Source: practice,
		told: []clue{untested},
	},
}

// Causes are all causes.
func Causes() []Cause { return append([]Cause(nil), causes...) }
