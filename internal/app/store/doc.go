// Package store keeps gardens: the text of each plan with all its revisions,
// its logbook, and a few settings, in one SQLite file in the user's own folder.
//
// What holds everywhere in it:
//   - what a call has returned without an error is on the disk, and outlives a
//     kill of the program in the next instant;
//   - a revision is never changed and never thrown away, and neither is a row
//     of the logbook: a correction is a new row. Only the wipe of a class takes
//     something out of them, and only who did what (wipe.go);
//   - the moment is passed in, so that the same calls keep the same rows;
//   - the SQL is plain enough for PostgreSQL: what only SQLite knows stands in
//     sqlite.go and in the files about whole databases (open, backup, restore);
//   - an error that a person can do something about is a *Refused, with what is
//     wrong and what to do.
package store
