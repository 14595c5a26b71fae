// Package book is the shop's own record: cards, trials, readings, power sources, spools, people, practice. Nothing in
// it is overwritten: a change is a new revision, a deletion a mark, and every revision names what it replaces. Two
// engines stand behind one interface: SQLite in one file, and PostgreSQL for several booths that share a book.
//
// # How a record is kept
//
// A revision's name is a hash of all it holds. Keeping one also brings its record's head up to date (the newest
// leaf), with the same statements on both engines. One goroutine writes (writer.go). It groups the savings that wait
// into one transaction, and tells each caller the truth: what was acknowledged is in the book, and what is said not
// to be kept is not. A change goes through SaveOn, which refuses it where another change came first. What is new goes
// through SaveOr, which keeps the very same revisions beside a server that is away. Migrations are only added, never
// changed.
//
// What is taken in from elsewhere is looked at first (door.go) and taken some at a time (taker.go).
//
// # How a book's file is opened
//
// A process has each file open once and counts who holds it (shelf.go), because closing any descriptor of a file
// drops the locks that the process has on it. sqlite.go opens to write or to read; apart.go reads where SQLite can
// lay nothing beside the file. Nothing else opens the file of a book, or what lies beside it: descriptor_test.go
// holds the code and the locks themselves to that. Whoever reads or writes a file that a user names asks IsPart
// first.
//
// # How a book is read
//
// All revisions are handed out one by one, and no query is open meanwhile, so a slow reader lets no log grow
// (walk.go). Where a page cannot be read each row is asked for by its number, and the indexes for what there was
// (salvage.go).
package book
