package plan

// Tub is one tub with its lid, its cups and what grows in it.
type Tub struct {
	// What the tub is called: 1 to 24 letters, digits, spaces or hyphens, no two alike. No person's name.
	Name string `plan:"name" pattern:"name" default:"tub 1, tub 2 and so on"`
	// The crop.
	Crop string `plan:"crop" words:"crops" one:"crop" default:"leaf lettuce"`
	// Several crops in one tub, each with its number of plants.
	Growing []Growing `plan:"growing" least:"1" one:"crop"`
	// How many plants: best, or a number.
	Plants Plants `plan:"plants" in:"1 to 200" default:"best"`
	// Aerated is with an air pump, still is without.
	Method string `plan:"method" words:"aerated,still" default:"aerated"`
	// The inside of a rectangular tub.
	Inside *Inside `plan:"inside" one:"shape,required"`
	// The inside of a round tub.
	Round *Round `plan:"round" one:"shape,required"`
	// A tub of any shape, by pouring known volumes and measuring the depth after each, from the empty tub up to its rim.
	Poured []Pour `plan:"poured" least:"2" one:"shape,required"`
	// Where the tub comes from: new, known means second-hand and you know what was in it, unknown means nobody does.
	Past string `plan:"past" words:"new,known,unknown" default:"new"`
	// The outside, measured with the lid on.
	Outside *Outside `plan:"outside"`
	// The lid.
	Lid Lid `plan:"lid,required"`
	// The net cup: of five cups the largest body and the smallest rim.
	Cup Cup `plan:"cup,required"`
	// The diameter of the hole for a cup.
	Hole Length `plan:"hole" in:"10 mm to 250 mm" default:"the common saw nearest the middle of what suits the cup"`
	// What its nutrient solution is to be, in place of the garden's feed.
	Feed *Feed `plan:"feed"`
	// How far apart, and how far from everything else.
	Spacing Spacing `plan:"spacing"`
	// Which of the three layouts the lid sheet shows.
	Layout string `plan:"layout" words:"widest,rows,ruler" default:"ruler"`
	// Nutrient solution for each plant.
	LitresPerPlant Volume `plan:"litres_per_plant" in:"0.2 L to 60 L" default:"the crop's"`
	// Air pump, tube and stones.
	Air Air `plan:"air"`
	// Depth of the water from the inside floor up to the fill line, instead of the one worked out.
	FillDepth Length `plan:"fill_depth" in:"1 cm to 1.5 m"`
	// The most that may be filled in, where the maker or the shelf sets a limit.
	MaxFill Volume `plan:"max_fill" in:"0.5 L to 1000 L"`
	// The mass of one plant at harvest that is wanted; the spacing follows it.
	HarvestMass Mass `plan:"harvest_mass" in:"5 g to 2 kg"`
	// Water you add on a day with lessons, as seen from your own topping up: 0.8 L/d or 0.8 L.
	DailyTopup DailyVolume `plan:"daily_topup" in:"0 L/d to 50 L/d"`
	// The day on which its seeds were sown, or are to be.
	Sow Date `plan:"sow" default:"worked out back from the meal"`
	// The day on which its plants moved into the tub, or are to move.
	Transplant Date `plan:"transplant" default:"worked out back from the meal"`
	// The packet of seed.
	Seed Seed `plan:"seed"`
	// Where its seedlings grow up to the move.
	Nursery Nursery `plan:"nursery"`
}

// Seed is a packet of seed.
type Seed struct {
	// How much of the seed comes up, as the packet says.
	Germination Share `plan:"germination" in:"5 % to 100 %" default:"the crop's"`
	// The year on the packet.
	PacketYear Whole `plan:"packet_year" in:"2000 to 2100" default:"the year of sowing"`
}

// Nursery is where seedlings grow up to the move into the tub.
type Nursery struct {
	// How many cells or plugs there are.
	Cells Whole `plan:"cells" in:"1 to 2000"`
	// Temperature of the plugs until green shows.
	Temperature Temperature `plan:"temperature" in:"1 °C to 40 °C" default:"air_temperature"`
	// Light on the seedlings.
	PPFD PPFD `plan:"ppfd" in:"1 µmol/m²/s to 1000 µmol/m²/s"`
}

// Growing is one of several crops in a tub.
type Growing struct {
	// The crop.
	Crop string `plan:"crop,required" words:"crops"`
	// How many plants of it.
	Plants Whole `plan:"plants,required" in:"1 to 200"`
}

// Inside is the inside of a rectangular tub.
type Inside struct {
	// Width and depth at the rim.
	Top Pair `plan:"top,required" in:"5 cm to 3 m"`
	// Width and depth at the floor.
	Base Pair `plan:"base,required" in:"5 cm to 3 m"`
	// Height from the inside floor to the rim.
	Height Length `plan:"height,required" in:"3 cm to 1.5 m"`
	// Radius of the upright corners: one, or that of the top and that of the base.
	CornerRadius Corners `plan:"corner_radius" in:"0 mm to 1 m" default:"0 mm"`
}

// Round is the inside of a round tub.
type Round struct {
	// Diameter at the rim.
	Top Length `plan:"top,required" in:"5 cm to 3 m"`
	// Diameter at the floor.
	Base Length `plan:"base,required" in:"5 cm to 3 m"`
	// Height from the inside floor to the rim.
	Height Length `plan:"height,required" in:"3 cm to 1.5 m"`
}

// Pour is the depth of the water after so much had been poured in altogether.
type Pour struct {
	// All that has been poured in so far.
	Volume Volume `plan:"volume,required" in:"0.1 L to 1000 L"`
	// The depth of the water then, from the inside floor.
	Depth Length `plan:"depth,required" in:"1 mm to 1.5 m"`
}

// Outside is the outside of a tub, measured with the lid on.
type Outside struct {
	// Width and depth at the widest, handles included.
	Size Pair `plan:"size" in:"5 cm to 3 m"`
	// Height from the shelf to the top of the lid.
	Height Length `plan:"height" in:"3 cm to 2 m"`
	// Mass of the empty tub with its lid.
	EmptyMass Mass `plan:"empty_mass" in:"50 g to 100 kg"`
}

// Cup is the net cup.
type Cup struct {
	// Diameter of the body right under the lip.
	Body Length `plan:"body,required" in:"10 mm to 250 mm"`
	// Outer diameter of the lip.
	Rim Length `plan:"rim,required" in:"10 mm to 300 mm"`
	// From under the lip to the outside of the bottom.
	Depth Length `plan:"depth,required" in:"10 mm to 300 mm"`
}

// Spacing is how far a hole keeps from its neighbours and from everything else.
type Spacing struct {
	// From centre to centre of neighbouring holes, at least.
	Between Length `plan:"between" in:"2 cm to 2 m" default:"the crop's, following harvest_mass"`
	// From a hole's centre to the lid's edge, at least.
	Edge Length `plan:"edge" in:"1 cm to 1 m" default:"6 cm"`
	// Plastic between a hole and a shape to keep clear, at least.
	Clear Length `plan:"clear" in:"0 mm to 50 cm" default:"20 mm"`
}

// Air is the air pump, the tube and the stones. The pump stands outside.
type Air struct {
	// What the pump gives.
	Flow AirFlow `plan:"flow" in:"0 L/min to 100 L/min" default:"1 L/min for each 10 L"`
	// How many air stones lie in the tub.
	Stones Whole `plan:"stones" in:"0 to 20" default:"1 for each 20 L; 0 when still"`
	// How high a stone is, as it lies.
	StoneHeight Length `plan:"stone_height" in:"5 mm to 20 cm" default:"25 mm"`
	// Outer diameter of the air tube.
	Tube Length `plan:"tube" in:"2 mm to 25 mm" default:"6 mm"`
	// Where the pump stands. It is mains-powered: above the water, tied so that it cannot fall in.
	Pump string `plan:"pump" words:"above water,below water" default:"above water"`
	// Electric power of the pump.
	Power Power `plan:"power" in:"0.5 W to 500 W"`
	// The depth of water against which the pump still blows, as its label says.
	Head Length `plan:"head" in:"5 cm to 20 m"`
}
