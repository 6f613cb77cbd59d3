package web

import "net/http"

// importPath takes a whole garden with its revisions, so it may be longer.
const importPath = "/import"

// tablePath takes a table of readings, so it may be longer too.
const tablePath = "/logbook/table"

// routes is every address of the program.
func (s *Server) routes() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", s.showStart)
	m.HandleFunc("POST /begin", s.begin)
	m.HandleFunc("POST /begin/try", s.tryBegin)
	m.HandleFunc("POST /view", s.chooseView)
	m.HandleFunc("POST "+importPath, s.importGarden)
	m.HandleFunc("GET /safety", s.showSafety)
	m.HandleFunc("GET /stored", s.showStored)
	m.HandleFunc("GET /backup", s.downloadBackup)
	m.HandleFunc("GET /offered", s.showOffered)
	m.HandleFunc("POST /offered", s.offered)
	s.gardenRoutes(m)

	m.Handle("GET /own/{sum}/{name}", s.static)
	m.HandleFunc("/", func(w http.ResponseWriter, r *http.Request) {
		s.refuse(w, r, http.StatusNotFound, "There is no page at this address.", "The first page leads to all others.")
	})
	return m
}

// gardenRoutes are the addresses of one garden.
func (s *Server) gardenRoutes(m *http.ServeMux) {
	m.HandleFunc("POST /g/{garden}/copy", s.copyGarden)
	m.HandleFunc("POST /g/{garden}/away", s.putAway)
	m.HandleFunc("POST /g/{garden}/back", s.bringBack)
	m.HandleFunc("POST /g/{garden}/wipe", s.wipeClass)
	m.HandleFunc("GET /g/{garden}/export", s.exportGarden)

	for _, page := range []*formPage{buildPage(), mixPage(), seasonPage(), choosePage(), classPage()} {
		s.formRoutes(m, page)
	}
	m.HandleFunc("POST /g/{garden}/merge", s.merge)

	m.HandleFunc("GET /g/{garden}/logbook", s.showLogbook)
	m.HandleFunc("POST /g/{garden}/logbook", s.writeReading)
	m.HandleFunc("POST /g/{garden}/logbook/both", s.keepBoth)
	m.HandleFunc("GET /g/{garden}/logbook/all", s.showReadings)
	m.HandleFunc("GET /g/{garden}/logbook/charts", s.showCharts)
	m.HandleFunc("GET /g/{garden}/logbook.csv", s.downloadReadings)
	m.HandleFunc("POST /g/{garden}"+tablePath, s.importReadings)

	m.HandleFunc("GET /g/{garden}/light", s.showLight)
	m.HandleFunc("GET /g/{garden}/light/part", s.showLightPart)
	m.HandleFunc("GET /g/{garden}/working", s.showWorkings)
	m.HandleFunc("GET /g/{garden}/working/{key}", s.showWorking)
	m.HandleFunc("GET /g/{garden}/working/{key}/part", s.showWorkingPart)
	m.HandleFunc("GET /g/{garden}/working/{key}/blanks", s.showBlanks)

	m.HandleFunc("GET /g/{garden}/papers", s.showPapers)
	m.HandleFunc("GET /g/{garden}/papers/{name}", s.downloadPaper)
	m.HandleFunc("GET /g/{garden}/papers/{name}/page", s.showPaperPage)

	m.HandleFunc("GET /g/{garden}/text", s.showText)
	m.HandleFunc("POST /g/{garden}/text", s.saveText)
	m.HandleFunc("GET /g/{garden}/plan.yaml", s.downloadText)
	m.HandleFunc("GET /g/{garden}/history", s.showHistory)
	m.HandleFunc("GET /g/{garden}/history/{number}", s.showRevision)
	m.HandleFunc("POST /g/{garden}/history/{number}/back", s.goBack)

	m.HandleFunc("GET /g/{garden}/today", s.showToday)

	m.HandleFunc("GET /g/{garden}/trouble", s.showTrouble)
	m.HandleFunc("GET /g/{garden}/meal", s.showMeal)

	m.HandleFunc("GET /g/{garden}/lessons", s.showLessons)
	m.HandleFunc("GET /g/{garden}/lessons/{sheet}", s.showLesson)
}
