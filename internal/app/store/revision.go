package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"
)

// Revision is one state of a garden's plan.
type Revision struct {
	Garden string // its id
	Number int    // from 1
	Text   []byte
	Why    string    // what the change was for, in a few words; may be empty
	At     time.Time // in UTC
}

// Revision is one revision with its text; number 0 is the latest. *NotFound
// where there is none.
func (s *Store) Revision(ctx context.Context, id string, number int) (r Revision, err error) {
	err = s.look(ctx, func(tx *sql.Tx) error {
		g, err := gardenIn(ctx, tx, id)
		if err != nil {
			return err
		}
		if number == 0 {
			number = g.Revision
		}
		r, err = revisionIn(ctx, tx, id, number)
		return err
	})
	return r, err
}

func revisionIn(ctx context.Context, tx *sql.Tx, id string, number int) (Revision, error) {
	r := Revision{Garden: id, Number: number}
	var ms int64
	err := tx.QueryRowContext(ctx, "SELECT text, why, at_ms FROM revision WHERE garden = $1 AND number = $2", id, number).Scan(&r.Text, &r.Why, &ms)
	if errors.Is(err, sql.ErrNoRows) {
		return Revision{}, &NotFound{fmt.Sprintf("revision %d of garden %s", number, id)}
	}
	r.At = moment(ms)
	return r, err
}

// Revisions are all revisions of a garden without their texts, newest first.
func (s *Store) Revisions(ctx context.Context, id string) ([]Revision, error) {
	var all []Revision
	err := s.look(ctx, func(tx *sql.Tx) error {
		if _, err := gardenIn(ctx, tx, id); err != nil {
			return err
		}
		rows, err := tx.QueryContext(ctx, "SELECT number, why, at_ms FROM revision WHERE garden = $1 ORDER BY number DESC", id)
		if err != nil {
			return err
		}
		defer func() { _ = rows.Close() }() // rows.Err tells what matters
		for rows.Next() {
			r := Revision{Garden: id}
			var ms int64
			if err := rows.Scan(&r.Number, &r.Why, &ms); err != nil {
				return err
			}
			r.At = moment(ms)
			all = append(all, r)
		}
		return rows.Err()
	})
	return all, err
}

// Save keeps a new revision of a garden, made from revision base, and the name
// that its plan gives the garden. Where base is not the latest, nothing is kept
// and the error is a *Conflict with the latest. A text that is the same as the
// latest makes no new revision, whatever it was made from: so a form that is
// sent twice is kept once.
func (s *Store) Save(ctx context.Context, id string, base int, name string, text []byte, why string, at time.Time) (r Revision, err error) {
	name, why = strings.TrimSpace(name), strings.TrimSpace(why)
	if err := checkRevision(name, text, why); err != nil {
		return Revision{}, err
	}
	err = s.change(ctx, func(tx *sql.Tx) error {
		g, err := gardenIn(ctx, tx, id)
		if err != nil {
			return err
		}
		if !g.Discarded.IsZero() {
			return &Refused{Reason: InBin, What: g.Name + " is in the bin", Hint: "bring it back first"}
		}
		latest, err := revisionIn(ctx, tx, id, g.Revision)
		switch {
		case err != nil:
			return err
		case bytes.Equal(latest.Text, text):
			r = latest
			return nil
		case base != g.Revision:
			return &Conflict{latest}
		}
		r = Revision{Garden: id, Number: g.Revision + 1, Text: bytes.Clone(text), Why: why, At: moment(milliseconds(at))}
		if err := addRevision(ctx, tx, id, r); err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, "UPDATE garden SET revision = $1, name = $2, changed_ms = $3 WHERE id = $4", r.Number, name, milliseconds(at), id)
		return err
	})
	if err != nil {
		return Revision{}, err
	}
	return r, nil
}

func addRevision(ctx context.Context, tx *sql.Tx, id string, r Revision) error {
	_, err := tx.ExecContext(ctx, "INSERT INTO revision (garden, number, text, why, at_ms) VALUES ($1, $2, $3, $4, $5)",
		id, r.Number, string(r.Text), r.Why, milliseconds(r.At))
	return err
}
