package web

import (
	"cmp"
	"net/http"
	"slices"
	"strings"
	"time"
)

// mostBytes is the longest request body taken: a plan, or a garden with all of
// its revisions.
const (
	mostBytes       = 1 << 20
	mostImportBytes = 64 << 20
	mostTableBytes  = 32 << 20 // a logbook of a hundred thousand rows
)

// longest is how long one answer may take before it is given up, where nothing
// else is asked for.
const longest = 30 * time.Second

// policy lets a page load what this program serves and nothing else: no inline
// script or style, no frame, no other host.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guarded puts what every request passes before the pages: only this machine's
// names as host, no request from another site, bounded bodies, strict headers.
func (s *Server) guarded(next http.Handler) http.Handler {
	crossOrigin := http.NewCrossOriginProtection()
	crossOrigin.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.refuse(w, r, http.StatusForbidden, "This came from another site, so nothing was done.", "Open the page from its own address and do it there.")
	}))
	bounded := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		limit := int64(mostBytes)
		switch {
		case r.URL.Path == importPath:
			limit = mostImportBytes
		case strings.HasSuffix(r.URL.Path, tablePath):
			limit = mostTableBytes
		}
		r.Body = http.MaxBytesReader(w, r.Body, limit)
		next.ServeHTTP(w, r)
	})
	inner := crossOrigin.Handler(http.TimeoutHandler(bounded, cmp.Or(s.Longest, longest), "This took too long and was given up. Nothing was changed. Go back and try again."))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
		h.Set("Cache-Control", "no-store")
		if !s.known(r.Host) {
			http.Error(w, "This address is not one of Rootbell's. Open http://127.0.0.1 with the port that 'rootbell serve' printed.", http.StatusMisdirectedRequest)
			return
		}
		defer s.recovered(w, r)
		inner.ServeHTTP(w, r)
	})
}

// known tells whether a request names this machine, so that no other name that
// was pointed at it can reach the pages.
func (s *Server) known(host string) bool {
	return slices.Contains(s.Hosts, strings.ToLower(host))
}

// recovered turns a mistake of the program into a page that says so.
func (s *Server) recovered(w http.ResponseWriter, r *http.Request) {
	if p := recover(); p != nil {
		if p == http.ErrAbortHandler { //nolint:errorlint // the panic value itself
			panic(p)
		}
		s.refuse(w, r, http.StatusInternalServerError, "Something in Rootbell went wrong here.", "What was saved is safe. Go back, or start again from the first page.")
	}
}
