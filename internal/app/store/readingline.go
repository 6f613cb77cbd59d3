package store

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"sync"
)

// A reading costs one write to the disk that waits until the disk has it. Of
// those that come while such a write is on its way, the next one takes all: the
// first of them does it, the others are told when it is done.

// line is where those who write a reading down stand.
type line struct {
	mu      sync.Mutex
	writing bool // one of them is at the disk
	waiting []*adding
}

// adding is one reading on its way.
type adding struct {
	garden string
	row    rowIn
	lead   chan struct{} // it is this one's turn to go to the disk
	done   chan struct{} // closed once stored and err are true

	stored bool
	err    error
}

// stand waits until a reading was written, or failed. The error is that of ctx,
// and then nothing of the reading was kept.
func (s *Store) stand(ctx context.Context, a *adding) error {
	s.line.mu.Lock()
	s.line.waiting = append(s.line.waiting, a)
	if !s.line.writing {
		s.line.writing = true
		a.lead <- struct{}{}
	}
	s.line.mu.Unlock()
	select {
	case <-a.lead:
		s.lead(ctx)
	case <-a.done:
	case <-ctx.Done():
		if s.leave(a) {
			return ctx.Err()
		}
		select {
		case <-a.lead:
			s.lead(ctx)
		case <-a.done:
		}
	}
	return nil
}

// leave takes one out of the line who gave up; false where it is on its way to
// the disk already, or first in line.
func (s *Store) leave(a *adding) bool {
	s.line.mu.Lock()
	defer s.line.mu.Unlock()
	i := slices.Index(s.line.waiting, a)
	if i < 0 || len(a.lead) > 0 {
		return false
	}
	s.line.waiting = slices.Delete(s.line.waiting, i, i+1)
	return true
}

// lead writes down all that wait, and passes the turn on. It does not give up
// with its own caller, because others wait for it too.
func (s *Store) lead(ctx context.Context) {
	s.line.mu.Lock()
	batch := s.line.waiting
	s.line.waiting = nil
	s.line.mu.Unlock()
	err := errNotDone
	defer func() { s.passOn(batch, err) }()
	err = s.writeDown(context.WithoutCancel(ctx), batch)
}

// errNotDone is told where the one at the disk broke down.
var errNotDone = errors.New("the reading was not written down")

// passOn tells a batch how it went, and gives the turn to the next in line.
func (s *Store) passOn(batch []*adding, err error) {
	for _, a := range batch {
		if err != nil {
			a.stored, a.err = false, err
		}
		close(a.done)
	}
	s.line.mu.Lock()
	defer s.line.mu.Unlock()
	if len(s.line.waiting) == 0 {
		s.line.writing = false
		return
	}
	s.line.waiting[0].lead <- struct{}{}
}

// writeDown keeps readings in one transaction. What is wrong with one of them
// is its own error; an error of the database is everyone's.
func (s *Store) writeDown(ctx context.Context, batch []*adding) error {
	return s.inserting(ctx, func(tx *sql.Tx, insert *sql.Stmt) error {
		for _, a := range batch {
			a.stored, a.err = addRow(ctx, tx, insert, a.garden, a.row)
			if a.err != nil && !ofOne(a.err) {
				return a.err
			}
		}
		return nil
	})
}

// ofOne tells whether an error is about one reading and has changed nothing.
func ofOne(err error) bool {
	var missing *NotFound
	var refused *Refused
	var taken *Taken
	return errors.As(err, &missing) || errors.As(err, &refused) || errors.As(err, &taken)
}
