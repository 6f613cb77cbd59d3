package store

import (
	"context"
	"database/sql"
	"errors"
	"time"
)

// Setting is the value kept under a key; empty where none is.
func (s *Store) Setting(ctx context.Context, key string) (value string, err error) {
	err = s.look(ctx, func(tx *sql.Tx) error {
		err := tx.QueryRowContext(ctx, "SELECT value FROM setting WHERE key = $1", key).Scan(&value)
		if errors.Is(err, sql.ErrNoRows) {
			return nil
		}
		return err
	})
	return value, err
}

// SetSetting keeps a value, one line of at most MostValue characters, under a
// key of at most MostKey.
func (s *Store) SetSetting(ctx context.Context, key, value string, at time.Time) error {
	if key == "" {
		return unfit("the setting has no key", "")
	}
	if err := checkLine("the setting's key", key, MostKey); err != nil {
		return err
	}
	if err := checkLine("the setting's value", value, MostValue); err != nil {
		return err
	}
	return s.change(ctx, func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx,
			"INSERT INTO setting (key, value, changed_ms) VALUES ($1, $2, $3) ON CONFLICT (key) DO UPDATE SET value = excluded.value, changed_ms = excluded.changed_ms",
			key, value, milliseconds(at))
		return err
	})
}
