// Package web shows gardens as pages: it reads forms, asks for assessments and
// answers with HTML that works without script.
//
// One file holds one page with its actions; routes.go lists them all. A page
// knows nothing of SQL (package store) and computes nothing of the garden
// itself (package garden).
package web
