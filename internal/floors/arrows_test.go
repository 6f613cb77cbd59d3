package floors

// arrows says which packages of the program each package may import. An entry
// that ends in "/..." stands for everything under it. A new package is entered
// here by whoever adds it: the test fails on one that it does not know.
var arrows = map[string][]string{
	"internal/base/quantity":         {},
	"internal/base/plane":            {},
	"internal/base/leastsq":          {},
	"internal/base/ode":              {},
	"internal/base/facts":            {"internal/base/quantity"},
	"internal/base/facts/factgen":    {"internal/base/facts"},
	"internal/base/working":          {"internal/base/quantity", "internal/base/facts"},
	"internal/base/working/pencil":   {},
	"internal/base/finding":          {"internal/base/quantity"},
	"internal/science/crop":          {"internal/base/..."},
	"internal/science/tub":           {"internal/base/..."},
	"internal/science/shelf":         {"internal/base/..."},
	"internal/science/netcup":        {"internal/base/..."},
	"internal/science/lid":           {"internal/base/..."},
	"internal/science/solution":      {"internal/base/..."},
	"internal/science/reading":       {"internal/base/..."},
	"internal/science/lamp":          {"internal/base/..."},
	"internal/science/oxygen":        {"internal/base/..."},
	"internal/science/water":         {"internal/base/..."},
	"internal/forecast":              {"internal/base/...", "internal/science/..."},
	"internal/school/shopping":       {"internal/base/..."},
	"internal/school/term":           {"internal/base/..."},
	"internal/school/steering":       {"internal/base/...", "internal/science/reading"},
	"internal/school/jobs":           {"internal/base/..."},
	"internal/school/choose":         {"internal/base/...", "internal/school/shopping", "internal/science/reading", "internal/science/lamp"},
	"internal/school/plainwords":     {"internal/base/..."},
	"internal/school/stations":       {"internal/base/..."},
	"internal/school/season":         {"internal/base/...", "internal/science/...", "internal/forecast", "internal/school/term"},
	"internal/school/trouble":        {"internal/base/..."},
	"internal/school/meal":           {"internal/base/..."},
	"internal/school/lesson":         {"internal/base/...", "internal/science/reading"},
	"internal/garden/plan":           {"internal/base/..."},
	"internal/garden/plan/schemagen": {"internal/base/quantity", "internal/garden/plan"},
	"internal/garden":                {"internal/base/...", "internal/forecast", "internal/science/...", "internal/school/...", "internal/garden/plan"},
	"internal/garden/sources":        {"internal/base/facts", "internal/garden"},
	"internal/paper/scene":           {"internal/base/plane"},
	"internal/paper/content":         {"internal/paper/scene"},
	"internal/paper/sheet":           {"internal/base/plane", "internal/garden", "internal/paper/content", "internal/paper/scene"},
	"internal/paper/cutaway":         {"internal/garden", "internal/paper/scene", "internal/paper/sheet"},
	"internal/paper/booklet":         {"internal/base/plane", "internal/garden", "internal/paper/content", "internal/paper/scene", "internal/paper/cutaway", "internal/paper/sheet"},
	"internal/paper/figure":          {"internal/base/plane", "internal/base/quantity", "internal/garden", "internal/paper/cutaway", "internal/paper/scene", "internal/paper/sheet", "internal/school/term"},
	"internal/paper/card":            {"internal/paper/content", "internal/paper/scene", "internal/paper/sheet"},
	"internal/paper/daily":           {"internal/garden", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet"},
	"internal/paper/care":            {"internal/garden", "internal/school/meal", "internal/school/trouble", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet"},
	"internal/paper/mixing":          {"internal/base/finding", "internal/base/quantity", "internal/garden", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet"},
	"internal/paper/lessons":         {"internal/base/quantity", "internal/base/working", "internal/garden", "internal/school/lesson", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet"},
	"internal/paper/deciding":        {"internal/base/quantity", "internal/garden", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet", "internal/school/choose"},
	"internal/paper/classroom":       {"internal/base/finding", "internal/base/quantity", "internal/garden", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet", "internal/school/jobs", "internal/school/plainwords", "internal/school/stations", "internal/school/term"},
	"internal/paper/chart":           {"internal/paper/figure", "internal/paper/scene", "internal/school/term"},
	"internal/paper/agenda":          {"internal/school/term"},
	"internal/paper/seasonal":        {"internal/base/quantity", "internal/garden", "internal/paper/agenda", "internal/paper/card", "internal/paper/content", "internal/paper/scene", "internal/paper/sheet", "internal/school/term"},
	"internal/paper/pack":            {"internal/base/quantity", "internal/school/shopping", "internal/garden", "internal/paper/..."},
	"internal/app/store":             {"internal/base/quantity", "internal/science/reading"},
	"internal/app/web":               {"internal/base/...", "internal/school/...", "internal/science/...", "internal/garden/...", "internal/paper/...", "internal/app/store", "examples"},
	"internal/app/cli":               {"internal/..."},
	"internal/app/cli/manpages":      {"internal/app/cli"},
	"internal/floors":                {},
	"cmd/rootbell":                   {"internal/app/..."},
}

// outside says which packages of other modules each floor may import; the
// longest entry that fits a package decides. It keeps the list of what the
// program rests on short and each choice deliberate.
var outside = map[string][]string{
	"internal/":                      {},
	"internal/science/":              {"gonum.org/v1/gonum/..."},
	"internal/garden/plan":           {"github.com/goccy/go-yaml/..."},
	"internal/garden/plan/schemagen": {"github.com/invopop/jsonschema", "github.com/pb33f/ordered-map/..."},
	"internal/paper/": {
		"codeberg.org/go-pdf/fpdf", "github.com/go-fonts/dejavu/...",
		"golang.org/x/image/...", "rsc.io/qr", "github.com/xuri/excelize/v2",
	},
	"internal/app/store": {"modernc.org/sqlite/...", "github.com/pressly/goose/v3/..."},
	"internal/app/web":   {"github.com/klauspost/compress/gzhttp", "github.com/rogpeppe/go-internal/diff"},
	"internal/app/":      {"github.com/spf13/cobra/...", "github.com/spf13/pflag", "golang.org/x/term"},
	"cmd/":               {},
}

// worldly are the standard packages that reach a disk, a network, another
// program or true randomness; "/..." as above.
var worldly = []string{
	"os/...", "net/...", "syscall", "plugin", "database/sql/...", "log/...",
	"crypto/rand", "math/rand",
}

// forbiddenNames are what an otherwise harmless package offers and a pure one
// must not use: the clock, the machine's zone and the shared random source.
var forbiddenNames = map[string][]string{
	"time": {
		"Now", "Since", "Until", "Local", "LoadLocation", "Sleep",
		"After", "AfterFunc", "Tick", "NewTimer", "NewTicker",
	},
	"math/rand/v2": {
		"ExpFloat64", "Float32", "Float64", "Int", "Int32", "Int32N", "Int64", "Int64N",
		"IntN", "N", "NormFloat64", "Perm", "Shuffle", "Uint", "Uint32", "Uint32N",
		"Uint64", "Uint64N", "UintN",
	},
}
