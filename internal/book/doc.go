// Package book is the shop's own record: cards, trials, readings, power sources, spools, people, practice. Nothing in
// it is overwritten: a change is a new revision, a deletion a mark, and every revision names what it replaces. Two
// engines are behind one interface: SQLite in one file, and PostgreSQL for several booths that share a book.
//
// # How a record is kept
//
// A revision's name is a hash of its content. Saving one also updates its record's head (the newest leaf), with the
// same statements on both engines. One goroutine writes (writer.go). It groups the waiting saves into one transaction
// and answers each caller: an acknowledged save is in the book, and a refused one is not. A change goes through SaveOn,
// which refuses it if another change came first. A new record goes through SaveOr, which puts the same revisions into a
// local file while a server cannot be reached. Updates of the tables are only added, never changed.
//
// Revisions from elsewhere are checked first (door.go) and saved in batches (taker.go).
//
// # How a book's file is opened
//
// A process opens each file once and counts its holders (shelf.go), because closing any descriptor of a file releases
// the locks that the process has on it. sqlite.go opens to write or to read; apart.go reads where SQLite cannot create
// files beside the book. Nothing else opens the file of a book or the files beside it: descriptor_test.go checks the
// code and the locks for that. Code that reads or writes a file that a user names asks IsPart first.
//
// # How a book is read
//
// All revisions are visited one by one, without an open query meanwhile, so that a slow reader does not make the log
// grow (walk.go). If a page cannot be read, each row is read by its number, and the indexes tell what rows there were
// (salvage.go).
package book
