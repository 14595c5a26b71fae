package book

import (
	"context"
	"encoding/json"
	"errors"
	"time"

	"brazebooth/internal/address"
)

// Schema is the version of what a revision's body holds.
const Schema = 1

// Kind is what a record is.
type Kind string

// The kinds of record.
const (
	CardKind    Kind = "card"
	TrialKind   Kind = "trial"
	ReadingKind Kind = "reading"
	SourceKind  Kind = "source"
	SpoolKind   Kind = "spool"
	PersonKind  Kind = "person"
	// PracticeKind is how a job in a simulated booth went; nothing is ever learned from it.
	PracticeKind Kind = "practice"
)

// Kinds lists every kind.
var Kinds = [...]Kind{CardKind, TrialKind, ReadingKind, SourceKind, SpoolKind, PersonKind, PracticeKind}

// Revision is one state of one record, for ever.
type Revision struct {
	Rev     string          `json:"rev"`              // hash of everything else
	ID      string          `json:"id"`               // of the record
	Parent  string          `json:"parent,omitempty"` // revision that this one replaces
	Kind    Kind            `json:"kind"`
	At      string          `json:"at"` // UTC, RFC 3339 with milliseconds; never before its parent's
	Who     string          `json:"who,omitempty"`
	Where   string          `json:"where,omitempty"`
	Program string          `json:"program"`
	Schema  int             `json:"schema"`
	Deleted bool            `json:"deleted,omitempty"`
	Body    json.RawMessage `json:"body"`

	own string // its hash, where this process made and checked it; never saved
}

// Head is a record as a list shows it: its present revision without the body.
type Head struct {
	ID      string `json:"id"`
	Rev     string `json:"rev"`
	Kind    Kind   `json:"kind"`
	At      string `json:"at"`
	Name    string `json:"name"`
	Line    string `json:"line"`
	Deleted bool   `json:"deleted,omitempty"`
}

// Query says which records to list, newest first. Each word of Text must begin a word of the record.
type Query struct {
	Kind    Kind // "" for all
	Text    string
	Deleted bool // deleted records too
	Limit   int  // 0: 50
	Offset  int
}

// Book is a shop's record. It is safe for use by several goroutines.
type Book interface {
	// Save keeps revisions, all of them or none; when it returns without an error they are on the disk, or with the
	// server. A revision that is there already is no error.
	Save(ctx context.Context, list ...Revision) error
	// SaveOn keeps one revision if what it replaces is still the record's present one; ErrStale where somebody else
	// changed the record first.
	SaveOn(ctx context.Context, r Revision) error
	// Get is a record's present revision, also where it is a deletion. ErrNone where there is no such record.
	Get(ctx context.Context, id string) (Revision, error)
	// History is every revision of a record, oldest first; after a merge it may have branches.
	History(ctx context.Context, id string) ([]Revision, error)
	// List is what a query finds.
	List(ctx context.Context, q Query) ([]Head, error)
	// Begun lists the records whose ids begin so, up to a few.
	Begun(ctx context.Context, kind Kind, prefix string) ([]Head, error)
	// Each hands out every revision in a fixed order, until the function errs.
	Each(ctx context.Context, visit func(Revision) error) error
	// Check reads the whole book and says what is wrong with it.
	Check(ctx context.Context) (faults []string, revisions int, err error)
	// Backup writes a copy of the book as a SQLite file that must not exist yet.
	Backup(ctx context.Context, file string) error
	// Where names the book for a reader: the file, or the server without its password.
	Where() string
	// ReadOnly says why nothing can be saved, "" where it can.
	ReadOnly() string
	Close() error
}

// ErrNone is the error of a look-up that finds nothing.
var ErrNone = errors.New("no such record in the book")

// ErrStale is the error of a change where another change came first.
var ErrStale = errors.New("somebody else changed this record meanwhile")

// ErrAddress is the error of opening a book by a bad address.
var ErrAddress = address.ErrBad

// ErrReadOnly is the error of saving into a book that is open only to read.
var ErrReadOnly = errors.New("this book can only be read")

// Clock is the time of a new revision; tests set it.
type Clock func() time.Time

// stamp is the form of a time in revisions.
func stamp(t time.Time) string { return t.UTC().Format("2006-01-02T15:04:05.000Z") }
